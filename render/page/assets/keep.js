// Readings and ticks. The server keeps them beside the design; until it has them, and when it
// keeps none, this browser does. Only changes are sent, so that two phones on one design do not take
// each other's readings away.

export function makeKeeping(store, changed) {
  const name = () => 'pending ' + store.model.heading.file;
  const keyOf = (section, check) => section.in + '|' + check.of;
  let test = null, kept = null, sending = false, late = 0;
  let pending = {readings: {}, cut: {}, words: {}};
  let trouble = '', refused = [];

  const count = () => Object.keys(pending.readings).length + Object.keys(pending.cut).length + Object.keys(pending.words).length;

  function remember() { store.keep(name(), count() ? JSON.stringify(pending) : ''); }

  async function load() {
    try { pending = {readings: {}, cut: {}, words: {}, ...JSON.parse(store.kept(name()) || '{}')}; } catch { /* begins anew */ }
    try {
      const answer = await store.api.get('/api/bench');
      if (JSON.stringify(answer.test) !== JSON.stringify(test)) test = answer.test; // else fields stay as they are
      kept = answer.kept;
      trouble = kept.problem || '';
    } catch (e) {
      trouble = e.message;
    }
    changed();
    if (count() && !trouble) send();
  }

  // hear takes in what another browser may have changed.
  async function hear() {
    if (sending || !test) return;
    try {
      kept = await store.api.get('/api/kept');
      trouble = kept.problem || '';
    } catch (e) {
      trouble = e.message;
    }
    changed();
  }

  async function send() {
    if (sending) return;
    sending = true;
    clearTimeout(late);
    const sent = JSON.stringify(pending), now = JSON.parse(sent);
    try {
      const answer = await store.api.send('PUT', '/api/kept', {...now.words, readings: Object.values(now.readings), cut: Object.values(now.cut)});
      kept = answer;
      refused = answer.refused || [];
      for (const part of ['readings', 'cut', 'words']) {
        for (const key of Object.keys(now[part])) {
          if (JSON.stringify(pending[part][key]) === JSON.stringify(now[part][key])) delete pending[part][key];
        }
      }
      trouble = '';
    } catch (e) {
      trouble = e.message;
      late = setTimeout(send, 5000);
    }
    sending = false;
    remember();
    changed();
    if (count() && !trouble) send();
  }

  // put takes a change and hands it on.
  function put(part, key, change) {
    const day = new Date(), two = (n) => String(n).padStart(2, '0');
    pending[part][key] = change;
    pending.words.date = day.getFullYear() + '-' + two(day.getMonth() + 1) + '-' + two(day.getDate());
    remember();
    send();
    changed();
  }

  addEventListener('online', () => count() && send());

  return {
    load,
    hear,
    test: () => test,
    reading(section, check) { return pending.readings[keyOf(section, check)]?.reads ?? kept?.readings[check.number] ?? ''; },
    read(section, check, reads) { put('readings', keyOf(section, check), {check: check.number, in: section.in, of: check.of, reads}); },
    // all are the readings that there are, as they are kept.
    all() {
      const list = [];
      for (const section of test?.sections || []) {
        for (const check of section.checks) {
          const reads = this.reading(section, check);
          if (reads) list.push({check: check.number, in: section.in, of: check.of, reads});
        }
      }
      const own = Object.values(pending.readings).filter((r) => !r.of);
      for (const e of [...(kept?.elsewhere || []).filter((e) => !own.some((o) => o.check === e.check && o.in === e.in)), ...own]) {
        if (e.reads) list.push({check: e.check, in: e.in, of: '', reads: e.reads});
      }
      return list;
    },
    sent: () => count() === 0,
    elsewhere(point) {
      const waiting = pending.readings[point.in + '|' + point.check];
      return waiting?.reads ?? kept?.elsewhere.find((e) => e.check === point.check && e.in === point.in)?.reads ?? '';
    },
    readElsewhere(point, reads) { put('readings', point.in + '|' + point.check, {...point, of: '', reads}); },
    done(row) { return pending.cut[row.wire]?.done ?? kept?.cut.includes(row.wire) ?? false; },
    tick(row, done) { put('cut', row.wire, {wire: row.wire, of: row.of, done}); },
    changedSince(row) { return !pending.cut[row.wire] && (kept?.changed.includes(row.wire) ?? false); },
    word(key) { return pending.words[key] ?? kept?.[key] ?? ''; },
    say(key, text) { put('words', key, text); },
    // state says in a sentence where all this is kept.
    state() {
      if (trouble) return 'Kept in this browser for now. ' + trouble;
      if (count()) return 'Being sent.';
      return kept?.file ? 'Kept in ' + kept.file + ', beside the design.' : 'Kept in this browser.';
    },
    notes: () => [...refused, ...(kept?.stale || [])],
    troubled: () => trouble !== '',
  };
}
