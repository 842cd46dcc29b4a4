// What best explains the readings.
import {el, put} from './dom.js';

export function makeCause(root, store, keeping) {
  function show() {
    put(root, el('header', {class: 'panehead'}, el('h2', {tabindex: '-1'}, 'What best explains your readings')), el('p', {class: 'none'}, 'Nothing yet.'));
  }
  return {show};
}
