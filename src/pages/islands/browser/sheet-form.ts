type Fields = readonly (readonly [string, string])[];

/** Every field of a form as it would be sent, pictures aside. */
export function fieldsOf(form: HTMLFormElement): Fields {
  return [...new FormData(form)].filter((field): field is [string, string] => typeof field[1] === 'string');
}

/** Fills a form in as it was kept. Fields that the form no longer has are passed over. */
export function fillIn(form: HTMLFormElement, fields: Fields): void {
  for (const [name, value] of fields) {
    const all = form.querySelectorAll<HTMLInputElement>(`[name="${CSS.escape(name)}"]`);
    for (const field of all) {
      if (field.type === 'radio' || field.type === 'checkbox') field.checked = field.value === value;
      else if (field.type !== 'file') field.value = value;
    }
  }
}

/** The day it is in the yard: `2026-04-03`. */
export function todayIn(timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  return parts.format(Date.now());
}
