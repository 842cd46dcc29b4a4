// What the views share. The state is in the address, behind '#', so that a link to it can be
// copied: view, sel (the label of the part chosen), in (the situation), and what each view adds.

export function makeStore(api) {
  const listeners = new Map();
  const store = {
    api,
    model: null,
    say: () => {},

    // get reads a value of the state; '' = not set.
    get(key) { return new URLSearchParams(location.hash.slice(1)).get(key) || ''; },

    // set changes values of the state, '' removes one; calls who listens to 'state'.
    set(values) {
      const state = new URLSearchParams(location.hash.slice(1));
      for (const [key, value] of Object.entries(values)) {
        if (value === '' || value === null || value === undefined) state.delete(key);
        else state.set(key, value);
      }
      const text = state.toString();
      if ('#' + text === location.hash) return;
      history.replaceState(null, '', location.pathname + location.search + (text ? '#' + text : ''));
      store.call('state');
    },

    // select chooses a part, wire or finding by its label: 'F1', 'W7'; '' = none.
    select(id) { store.set({sel: id}); },

    // part is the part or wire of a label.
    part(id) { return store.model ? store.model.parts.find((p) => p.id === id) : undefined; },

    on(event, f) { listeners.set(event, [...(listeners.get(event) || []), f]); },
    call(event, value) { for (const f of listeners.get(event) || []) f(value); },

    // keep and kept hold what belongs to this browser alone, such as its theme.
    keep(key, value) { try { localStorage.setItem('fusewright ' + key, value); } catch { /* kept nowhere */ } },
    kept(key) { try { return localStorage.getItem('fusewright ' + key) || ''; } catch { return ''; } },
  };
  addEventListener('hashchange', () => store.call('state'));
  return store;
}
