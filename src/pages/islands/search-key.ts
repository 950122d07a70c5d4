import { startIsland } from './browser/start-island.js';

const KEPT_AS = 'axlebook-search-key';

/** `/` leads to the search, unless something is being typed, or somebody wants the key for something else. */
startIsland('search-key', (place) => {
  const search = place.querySelector<HTMLInputElement>('input[type=search]');
  const wish = place.querySelector<HTMLInputElement>('[data-search-key]');
  if (search === null || wish === null) return;
  wish.checked = localStorage.getItem(KEPT_AS) !== 'no';
  wish.addEventListener('change', () => localStorage.setItem(KEPT_AS, wish.checked ? 'yes' : 'no'));
  document.addEventListener('keydown', (event) => {
    if (event.key !== '/' || event.ctrlKey || event.altKey || event.metaKey || !wish.checked || isTyping(event)) return;
    event.preventDefault();
    search.focus();
    search.select();
  });
  place.classList.add('awake');
});

function isTyping({ target }: KeyboardEvent): boolean {
  return target instanceof HTMLElement && target.matches('input:not([type=checkbox], [type=radio]), select, textarea');
}
