// How the page asks its server. The page that is sent as one file has another module of this
// name, which answers from what is written into it.

export const live = true; // there is a server: files are followed, questions are answered
export const speeds = null; // of the planner: any
export const parkedH = null;
export function holds() { return true; } // any state of the planner is answered

async function answered(request) {
  const response = await request;
  const type = response.headers.get('Content-Type') || '';
  const body = type.startsWith('application/json') ? await response.json() : await response.text();
  if (!response.ok) throw Object.assign(new Error(body.problem || body || response.statusText), {near: body.near});
  return body;
}

// model is what all views show; see render/page/page.go.
export function model() { return answered(fetch('/api/model')); }

// drawing is the text of the schematic, an SVG.
export function drawing() { return answered(fetch('/api/drawing')); }

// get asks with parameters: get('/api/why', {of: 'drop of left lamp'}).
export function get(path, parameters = {}) {
  return answered(fetch(path + '?' + new URLSearchParams(parameters)));
}

// send asks with a body: send('POST', '/api/outlook', {...}).
export function send(method, path, body) {
  return answered(fetch(path, {method, headers: {'Content-Type': 'application/json'}, body: JSON.stringify(body)}));
}

// follow calls changed whenever the design is another one, lost with whether the server is gone, and
// readings whenever some were kept.
export function follow(changed, lost, readings) {
  const source = new EventSource('/api/events');
  source.addEventListener('changed', (e) => changed(JSON.parse(e.data)));
  source.addEventListener('readings', readings);
  source.addEventListener('open', () => lost(false));
  source.addEventListener('error', () => {
    lost(true);
    if (source.readyState === EventSource.CLOSED) setTimeout(() => follow(changed, lost, readings), 5000); // refused: there may be a place later
  });
}
