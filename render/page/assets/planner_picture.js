// The picture of the planner: charging output over engine speed, the demand across it, and the gap
// at the speed as a bar. Its words stand below it.
import {pic, put} from './dom.js';

const least = 240;

// picture draws into an element as wide as that is; lengths are pixels, so that type keeps its size.
export function picture(box, plan, state, answer) {
  const paper = matchMedia('print').matches; // there it is drawn as wide as the sheet
  const width = paper ? 640 : Math.max(box.clientWidth, 260);
  const height = paper ? 340 : Math.min(Math.max(width * 0.78, least), 540);
  if (plan.output.length === 0) { put(box); return; }
  const wide = width > 480;
  const edge = {left: 40, right: wide ? 108 : 10, top: 14, bottom: 40};
  const most = plan.mostRpm;
  const demand = answer.runningA;
  const now = {rpm: state.speedPerMin, output: answer.outputA, demand: answer.demandA};
  const tallest = Math.max(...plan.output.map((p) => p[1]), demand || 0, now.demand || 0, 1);
  const step = steps(tallest * 1.08, 7);
  const top = Math.ceil(tallest * 1.04 / step) * step;
  const firstRpm = Math.min(plan.output[0][0], now.rpm > 0 ? now.rpm : Infinity);
  const lowRpm = now.rpm === 0 ? 0 : Math.max(0, Math.floor((firstRpm - 200) / 500) * 500);
  const x = (rpm) => edge.left + (rpm - lowRpm) / (most - lowRpm) * (width - edge.left - edge.right);
  const y = (amps) => height - edge.bottom - amps / top * (height - edge.top - edge.bottom);
  const svg = pic('svg', {viewBox: `0 0 ${width} ${height}`, width, height, class: 'plot'});
  const add = (tag, attributes, ...children) => svg.append(pic(tag, attributes, ...children));
  const line = (x1, y1, x2, y2, cls) => add('line', {x1, y1, x2, y2, class: cls});
  const words = (at, up, anchor, cls, says) => add('text', {x: at, y: up, 'text-anchor': anchor, class: cls}, says);
  const right = width - edge.right, floor = y(0);

  if (answer.vehicleA && now.rpm > 0) {
    add('rect', {x: edge.left, y: y(answer.vehicleA), width: right - edge.left, height: floor - y(answer.vehicleA), class: 'base'});
  }
  for (let a = 0; a <= top + 1e-9; a += step) {
    line(edge.left, y(a), right, y(a), a === 0 ? 'axis' : 'rule');
    words(edge.left - 6, y(a) + 4, 'end', 'tick', a + step > top + 1e-9 ? a + ' A' : String(a));
  }
  const speed = steps(most - lowRpm, wide ? 8 : 5);
  for (let n = Math.ceil(lowRpm / speed) * speed; n <= most; n += speed) {
    line(x(n), floor, x(n), floor + 5, 'rule');
    words(x(n), floor + 18, n > most - speed / 2 ? 'end' : 'middle', 'tick', String(n));
  }
  words(right, height - 4, 'end', 'tick', 'engine speed, rpm');

  const curve = plan.output.map(([n, a]) => [x(n), y(a)]);
  if (curve.length && demand !== null) {
    const areas = {lack: '', room: ''};
    plan.output.slice(1).forEach((p, i) => { // piece by piece: what lies below the demand, what above it
      const q = plan.output[i];
      if ((p[1] - demand) * (q[1] - demand) >= 0) { area([q, p], p[1] + q[1] < 2 * demand ? 'lack' : 'room'); return; }
      const meet = [q[0] + (p[0] - q[0]) * (demand - q[1]) / (p[1] - q[1]), demand];
      area([q, meet], q[1] < demand ? 'lack' : 'room');
      area([meet, p], q[1] < demand ? 'room' : 'lack');
    });
    for (const [cls, d] of Object.entries(areas)) if (d) add('path', {d, class: cls}); // in one, so that no seams show
    function area(points, cls) {
      areas[cls] += points.map(([n, a], i) => (i ? 'L' : 'M') + x(n) + ' ' + y(a)).join('') +
        `L${x(points[points.length - 1][0])} ${y(demand)}L${x(points[0][0])} ${y(demand)}Z`;
    }
  }
  add('path', {d: curve.map((p, i) => (i ? 'L' : 'M') + p[0] + ' ' + p[1]).join(''), class: 'output'});
  if (demand !== null) line(edge.left, y(demand), right, y(demand), 'demand');

  // What the lines are, beside them or, where there is no room, upon them: from the top down, no two upon one another.
  const names = [];
  const label = (a, down, ...lines) => names.push({at: y(a) + (wide ? 4 : down), lines: wide ? lines : lines.slice(0, 1)});
  const end = plan.output[plan.output.length - 1][1];
  label(end, -6, ['name', 'output']);
  if (demand !== null) label(demand, end >= demand && y(demand) - y(end) < 30 ? 14 : -6, ['name', now.rpm > 0 ? 'all that is on' : 'with it running'], ['tick', answer.runningText]);
  if (answer.vehicleA && now.rpm > 0) label(answer.vehicleA, 14, ['tick', `the ${plan.noun} itself`]);
  names.sort((a, b) => a.at - b.at);
  let free = edge.top;
  for (const n of names) free = (n.at = Math.max(n.at, free)) + n.lines.length * 15 + (wide ? 4 : 0);
  free = floor + (wide ? 15 : 11); // below the last line
  for (const n of names.toReversed()) {
    n.at = Math.min(n.at, free - n.lines.length * 15);
    free = n.at - (wide ? 4 : 0);
    n.lines.forEach(([cls, says], i) => words(wide ? right + 8 : right - 4, n.at + 15 * i, wide ? 'start' : 'end', cls, says));
  }

  if (answer.evenRpm && now.rpm > 0 && answer.spareA < 0 && answer.evenRpm > now.rpm) {
    line(x(answer.evenRpm), y(demand), x(answer.evenRpm), floor, 'even');
    const at = x(answer.evenRpm), left = at > edge.left + (right - edge.left) * 0.6;
    words(at + (left ? -6 : 6), wide ? floor - 8 : (y(demand) + y(answer.vehicleA || 0)) / 2 + 4, left ? 'end' : 'start', 'tick', 'even at ' + Math.round(answer.evenRpm) + ' rpm');
  }
  if (now.output !== null && now.demand !== null) {
    const at = x(Math.min(Math.max(now.rpm, lowRpm), most));
    line(at, edge.top, at, floor, 'here');
    const short = answer.spareA < 0;
    if (now.rpm > 0) add('line', {x1: at, y1: y(now.output), x2: at, y2: y(now.demand), class: short ? 'gap short' : 'gap spare'});
    add('circle', {cx: at, cy: y(now.demand), r: 3.5, class: 'dot'});
    add('circle', {cx: at, cy: y(now.output), r: 5.5, class: 'ring'});
    const says = now.rpm > 0 ? `${answer.spareText} at ${Math.round(now.rpm)} rpm` : `${answer.demandText} drawn, stopped`;
    const left = at > edge.left + (right - edge.left) * 0.6;
    words(at + (left ? -8 : 8), edge.top + 12, left ? 'end' : 'start', now.rpm === 0 ? 'says' : short ? 'says short' : 'says spare', says);
  }
  put(box, svg);
}

// steps is a round step that parts a span into at most so many.
function steps(span, most) {
  const ten = 10 ** Math.floor(Math.log10(span / most));
  return [1, 2, 5, 10].map((k) => k * ten).find((s) => span / s <= most);
}
