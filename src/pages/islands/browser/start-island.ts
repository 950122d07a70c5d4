/** Hands the place of an island, and the data the page came with, to what takes it over. */
export function startIsland<Data>(name: string, run: (place: HTMLElement, data: Data) => void): void {
  const place = document.querySelector<HTMLElement>(`[data-island="${name}"]`);
  const data = document.querySelector(`[data-island-data="${name}"]`)?.textContent;
  if (place !== null && data) run(place, JSON.parse(data) as Data);
}
