// The drawing: moved and zoomed by mouse, touch and keys, its parts and wires chosen by their
// spots. The spots lie under the lines; a circuit is marked by colouring theirs.
import {el, put} from './dom.js';

const farthest = 12, step = 1.35; // how far one zooms in, and by how much at a time

// makeSheet gives {root, show(svg), light(out, back), choose(id), fit(), zoom(factor)}. It calls
// chosen(id) for a click on a part, wire or flag, and over(id) while one is pointed at or focused,
// over('') when it no longer is.
export function makeSheet({chosen, over, label}) {
  const root = el('div', {class: 'sheet', tabindex: '0', role: 'group',
    'aria-label': 'Schematic. Arrows move it, plus and minus zoom, 0 fits it.'});
  let svg = null, whole = [0, 0, 1, 1], view = whole;
  let spots = new Map(), drawn = [];

  function show(text) {
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    if (parsed.nodeName !== 'svg') return;
    const size = parsed.getAttribute('viewBox').split(' ').map(Number);
    const same = size.join() === whole.join();
    svg = document.importNode(parsed, true);
    whole = size;
    spots = new Map();
    drawn = [...svg.querySelectorAll('.part, .wire, .label, .ground')];
    for (const g of svg.querySelectorAll('.spot')) {
      const id = g.dataset.of;
      spots.set(id, g);
      const name = label(id);
      if (!name) continue;
      g.setAttribute('tabindex', '0');
      g.setAttribute('role', 'button');
      g.setAttribute('aria-label', name);
      g.addEventListener('pointerenter', () => over(id));
      g.addEventListener('pointerleave', () => over(''));
      g.addEventListener('focus', () => { over(id); reveal(g); });
      g.addEventListener('blur', () => over(''));
      g.addEventListener('keydown', (e) => {
        if (e.key === 'Enter' || e.key === ' ') { e.preventDefault(); chosen(id); }
      });
    }
    for (const g of svg.children) if (!g.classList.contains('spot')) g.setAttribute('aria-hidden', 'true');
    svg.setAttribute('role', 'group');
    svg.setAttribute('aria-label', 'Parts and wires');
    put(root, svg);
    height();
    if (same) place(view); else fit();
  }

  // The panel is as high as the drawing at its width, within what the screen leaves.
  function height() {
    const wide = root.clientWidth;
    if (!svg || wide === 0) return;
    const high = Math.min(Math.max(wide * whole[3] / whole[2], 220), Math.max(320, innerHeight * .74));
    root.style.height = Math.round(high) + 'px';
  }
  new ResizeObserver(height).observe(root);
  addEventListener('resize', height);

  // light marks a way out and back, and lets all else fade; without one nothing fades.
  function light(out = [], back = [], keep = []) {
    const lit = new Set([...out, ...back, ...keep].map((id) => id.split(':')[0]));
    for (const [id, g] of spots) {
      g.classList.toggle('out', out.includes(id));
      g.classList.toggle('back', back.includes(id));
    }
    if (svg) svg.classList.toggle('lit-some', lit.size > 0);
    for (const g of drawn) g.classList.toggle('lit', lit.has(g.dataset.of) || !g.dataset.of);
  }

  function choose(id) {
    for (const [of, g] of spots) g.classList.toggle('chosen', of === id);
  }

  // place shows a rectangle of the drawing, kept within it.
  function place([x, y, w, h]) {
    w = Math.min(Math.max(w, whole[2] / farthest / Math.max(1, whole[3] / 400)), whole[2]);
    h = Math.min(Math.max(h, whole[3] / farthest / Math.max(1, whole[3] / 400)), whole[3]);
    x = Math.min(Math.max(x, whole[0]), whole[0] + whole[2] - w);
    y = Math.min(Math.max(y, whole[1]), whole[1] + whole[3] - h);
    view = [x, y, w, h];
    if (svg) svg.setAttribute('viewBox', view.map((v) => v.toFixed(2)).join(' '));
    root.classList.toggle('moved', w < whole[2] - 0.01 || h < whole[3] - 0.01);
  }

  function fit() {
    // A very long drawing is shown at a size at which it can be read, from its head.
    const box = root.getBoundingClientRect();
    const tall = box.width > 0 && whole[3] / whole[2] > 3 * box.height / box.width;
    place(tall ? [whole[0], whole[1], whole[2], whole[2] * box.height / box.width] : whole);
  }

  // zoom keeps a point of the drawing where it is on the screen; the middle without one.
  function zoom(factor, at = [view[0] + view[2] / 2, view[1] + view[3] / 2]) {
    const w = view[2] / factor, h = view[3] / factor;
    place([at[0] - (at[0] - view[0]) / factor, at[1] - (at[1] - view[1]) / factor, w, h]);
  }

  // point is a place on the screen in the drawing.
  function point(x, y) {
    const p = new DOMPoint(x, y).matrixTransform(svg.getScreenCTM().inverse());
    return [p.x, p.y];
  }

  // reveal moves the drawing so that something in it is seen.
  function reveal(g) {
    const b = g.getBBox();
    if (b.x >= view[0] && b.y >= view[1] && b.x + b.width <= view[0] + view[2] && b.y + b.height <= view[1] + view[3]) return;
    if (b.width > view[2] || b.height > view[3]) return;
    place([b.x + b.width / 2 - view[2] / 2, b.y + b.height / 2 - view[3] / 2, view[2], view[3]]);
  }

  root.addEventListener('wheel', (e) => {
    if (!e.ctrlKey || !svg) return; // else the page scrolls
    e.preventDefault();
    zoom(e.deltaY < 0 ? 1.15 : 1 / 1.15, point(e.clientX, e.clientY));
  }, {passive: false});

  root.addEventListener('keydown', (e) => {
    if (e.ctrlKey || e.altKey || e.metaKey) return;
    const by = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]}[e.key];
    if (by) place([view[0] + by[0] * view[2] / 8, view[1] + by[1] * view[3] / 8, view[2], view[3]]);
    else if (e.key === '+' || e.key === '=') zoom(step);
    else if (e.key === '-') zoom(1 / step);
    else if (e.key === '0') fit();
    else return;
    e.preventDefault();
  });

  // One pointer moves the drawing, two zoom it; one that has not moved chooses.
  const down = new Map();
  let moved = false, target = null;
  root.addEventListener('pointerdown', (e) => {
    if (!svg || e.button > 0) return;
    if (down.size === 0) { moved = false; target = e.target.closest('[data-of]'); }
    down.set(e.pointerId, [e.clientX, e.clientY]);
  });
  root.addEventListener('pointermove', (e) => {
    const was = down.get(e.pointerId);
    if (!was || !svg) return;
    const now = [e.clientX, e.clientY];
    if (!moved && Math.hypot(now[0] - was[0], now[1] - was[1]) < 5) return;
    if (!moved) {
      moved = true;
      root.setPointerCapture(e.pointerId);
      root.classList.add('held');
    }
    if (down.size === 1) {
      const a = point(...was), b = point(...now);
      place([view[0] + a[0] - b[0], view[1] + a[1] - b[1], view[2], view[3]]);
    } else if (down.size === 2) {
      const other = [...down].find(([id]) => id !== e.pointerId)[1];
      const apart = (p) => Math.hypot(p[0] - other[0], p[1] - other[1]);
      if (apart(was) > 0) zoom(apart(now) / apart(was), point((now[0] + other[0]) / 2, (now[1] + other[1]) / 2));
    }
    down.set(e.pointerId, now);
  });
  const up = (e) => {
    if (!down.delete(e.pointerId)) return;
    root.classList.remove('held');
    if (e.type === 'pointerup' && !moved && down.size === 0) chosen(target ? target.dataset.of : '', target && target.classList.contains('finding') ? Number(target.id.replace(/^flag-/, '')) || 0 : 0);
  };
  root.addEventListener('pointerup', up);
  root.addEventListener('pointercancel', up);

  return {root, show, light, choose, fit, zoom, reveal: (id) => { const g = spots.get(id); if (g) reveal(g); }};
}
