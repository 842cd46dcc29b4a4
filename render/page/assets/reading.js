// One reading of the bench test: what was typed, and whether it is within its bounds.

const factors = {'': 1, 'µ': 1e-6, 'μ': 1e-6, u: 1e-6, m: 1e-3, k: 1e3, M: 1e6};
const written = /^([+\-−]?\d+(?:[.,]\d*)?|[.,]\d+)\s*(?:(µ|μ|u|m|k|M)?(V|A|Ω|Ω|ohm))?$/i;

// value is a text as it is kept, "13.21 V" or "open", in a unit; NaN = it is none.
function value(text, unit) {
  if (text === 'open') return Infinity;
  const found = written.exec(text);
  if (!found || !found[3]) return NaN;
  const of = /^(µ|m|k|M)?(.+)$/.exec(unit), base = found[3].toLowerCase() === 'ohm' || found[3] === 'Ω' ? 'Ω' : found[3].toUpperCase();
  if (base !== of[2]) return NaN;
  return number(found[1]) * prefix(found[2]) / factors[of[1] || ''];
}

function prefix(p) { return p === undefined ? 1 : factors[p] ?? factors[p.toLowerCase()]; }
function number(text) { return Number(text.replace(',', '.').replace('−', '-')); }

// typed is what is kept of what was typed into a field: comma or point, with a unit or in that of the
// field; null = no reading.
export function typed(text, unit) {
  text = text.trim();
  if (text === '') return '';
  if (/^(ol|o\.l\.?|open|∞)$/i.test(text)) return unit.endsWith('Ω') ? 'open' : null;
  const found = written.exec(text);
  if (!found) return null;
  const digits = found[1].replace(',', '.').replace('−', '-').replace(/^\./, '0.').replace(/\.$/, '');
  const kept = digits + ' ' + (found[3] ? (found[2] || '').replace(/[uμ]/, 'µ') + found[3].replace(/^(ohm|Ω)$/i, 'Ω').replace(/[va]/, (c) => c.toUpperCase()) : unit);
  return Number.isNaN(value(kept, unit)) ? null : kept;
}

// shown is what stands in the field of a text that is kept.
export function shown(text, unit) {
  if (text === '' || text === 'open') return text;
  const [digits, in_] = text.split(' ');
  return in_ === unit ? digits : String(Number(value(text, unit).toPrecision(4)));
}

// allowed is the bounds in words: of a reading against the battery's, reckoned from what that was.
export function allowed(check, battery) {
  if (!check.against) return check.allowed || '';
  const [low, high] = limits(check, battery);
  if (Number.isNaN(battery)) return check.allowed + ' below ' + check.against + ': read that first';
  return low.toFixed(2) + ' to ' + high.toFixed(2) + ' V';
}

// limits are the least and the most that a reading may be. Two decimals of a reading that is held
// against the battery's are taken inward, so that just what is printed passes.
function limits(check, battery) {
  const low = check.low ?? -Infinity, high = check.high ?? Infinity;
  if (!check.against) return [low, high];
  return [Math.ceil((battery - high) * 100 - 1e-6) / 100, Math.floor((battery - Math.max(low, 0)) * 100 + 1e-6) / 100];
}

// judge tells of a check and its text whether it passes, and if not, by how much. battery is the
// reading it is held against, in volts.
export function judge(check, text, battery) {
  if (!text) return {};
  if (check.see) return text === 'right' ? {pass: true} : {pass: false, says: 'Not as it must be: ' + check.see + '.'};
  const v = value(text, check.unit);
  if (Number.isNaN(v) || check.against && Number.isNaN(battery)) return {};
  const [low, high] = limits(check, battery);
  if (v >= low && (v <= high || check.against && check.low === undefined)) return {pass: true};
  if (check.against) {
    const below = battery - v;
    return {pass: false, says: v < low ? volts(below) + ' below the battery, ' + volts(check.high) + ' at most.'
      : below < 0 ? volts(-below) + ' above the battery: read both again.'
      : volts(below) + ' below the battery, ' + volts(check.low) + ' at least.'};
  }
  if (v === Infinity) return {pass: false, says: 'Open: nothing passes.'};
  return {pass: false, says: v > high ? figure(v - high) + ' ' + check.unit + ' too much.' : figure(low - v) + ' ' + check.unit + ' too little.'};
}

// volts prints volts as a meter would: millivolts below one.
function volts(v) { return v < 0.9995 ? Math.round(v * 1000) + ' mV' : v.toFixed(2) + ' V'; }

// figure is a number with three digits that mean something.
function figure(v) { return v >= 100 ? String(Math.round(v)) : String(Number(v.toPrecision(3))); }

// volts of the battery as it was read; NaN = not yet.
export function batteryOf(check, text) { return check.against && text ? value(text, 'V') : NaN; }
