// Readings as a file that the program reads, from a page without a server.
import {el} from './dom.js';

export function saved(keeping, heading) {
  return el('button', {type: 'button', class: 'button', onclick: () => {
    const cell = (text) => (/[",\n]/.test(text) ? '"' + text.replaceAll('"', '""') + '"' : text);
    const rows = [['check', 'in', 'of', 'engine', 'reads'], ['design', '', '', '', heading.file]];
    for (const word of ['date', 'by', 'meter']) if (keeping.word(word)) rows.push([word, '', '', '', keeping.word(word)]);
    for (const r of keeping.all()) rows.push([r.check, r.in, r.of, '', r.reads]);
    for (const w of keeping.test().cut) if (keeping.done(w)) rows.push(['cut', '', w.of, '', w.wire]);
    const link = el('a', {href: URL.createObjectURL(new Blob([rows.map((r) => r.map(cell).join(',')).join('\n') + '\n'], {type: 'text/csv'})),
      download: heading.file.replace(/\.[^.]*$/, '') + '.bench.csv'});
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }}, 'Save the readings');
}
