/** Units that end the name of a fact. Forms carry other units, so their fields go by the name without one. */
const UNIT = /(NPerM|Kpa|Kg|Km|Nm|Mm|Cents|M|N)(?=$|\.\d+$)/;

/** From the path of a fact to the name of its field: `plate.gvwrKg` → `plate.gvwr`, `axles[0].gawrKg` → `axles.0.gawr`. */
export function fieldName(path: string): string {
  return path.replace(/\[(\d+)\]/g, '.$1').replace(UNIT, '');
}
