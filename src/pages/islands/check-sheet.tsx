import { render } from 'preact';
import type { CheckSheetData } from '../sheets/sheet-data.js';
import { keepPages, sendWhenThereIsSignal, wipeOnSignOut } from './browser/keep-pages.js';
import { PhoneSheets } from './browser/phone-sheets.js';
import { type Draft, findDraft, keepDraft, newSendId, type PhonePicture, signSheet } from './browser/phone-store.js';
import { labelScanner } from './browser/scan-label.js';
import { fieldsOf, fillIn, todayIn } from './browser/sheet-form.js';
import { badSafetyLines, whatIsWrong, wrongNumber } from './browser/sheet-problems.js';
import { shrinkPhoto } from './browser/shrink-photo.js';
import { SignPad } from './browser/sign-pad.js';
import { startIsland } from './browser/start-island.js';

const MOST_PHOTOS = 12;

/** A check sheet that keeps itself on the phone as it is filled in, and is signed there, signal or none. */
class PhoneSheet {
  readonly #form: HTMLFormElement;
  readonly #line: HTMLElement;
  readonly #data: CheckSheetData;
  readonly #pad: SignPad;
  #photos: PhonePicture[] = [];
  #refusedFor: readonly string[] = [];
  /** Keepings follow one another, so that an earlier one never overwrites a later. */
  #keeping: Promise<void> = Promise.resolve();
  #queued = false;
  #signed = false;

  constructor(form: HTMLFormElement, line: HTMLElement, data: CheckSheetData) {
    this.#form = form;
    this.#line = line;
    this.#data = data;
    this.#pad = new SignPad(this.#part('.sign-pad'), () => this.#keep());
  }

  async start(): Promise<void> {
    const draft = await findDraft(this.#data.person, this.#data.path);
    if (draft === null) this.#begin();
    else await this.#takeUp(draft);
    this.#form.addEventListener('input', () => this.#changed());
    this.#form.addEventListener('change', () => this.#changed());
    this.#form.addEventListener('submit', (event) => {
      event.preventDefault();
      void this.#sign();
    });
    this.#startPhotos();
    this.#startScanning();
    this.#form.noValidate = true;
    this.#form.dataset.awake = 'yes';
    const opensOffline = await keepPages(['/sheets', this.#data.path]);
    if (opensOffline) this.#form.dataset.kept = 'yes';
    if (draft === null)
      this.#say(opensOffline ? 'Kept on this phone as you go, signal or none.' : 'Kept on this phone as you go.');
  }

  /** A page kept on the phone is begun from more than once, and on later days: each sheet is its own, and of its day. */
  #begin(): void {
    this.#set('sendId', newSendId());
    const today = todayIn(this.#data.timeZone);
    if (today > this.#data.today) this.#set('doneOn', today);
  }

  async #takeUp(draft: Draft): Promise<void> {
    fillIn(this.#form, [...draft.fields, ['sendId', draft.sendId]]);
    this.#photos = [...draft.photos];
    this.#refusedFor = draft.refusedFor;
    this.#showPhotos();
    if (draft.signature !== null) await this.#pad.show(draft.signature);
    this.#warn();
    this.#say(`Taken up where you left it, ${timeOf(draft.savedAt)}.`);
    if (draft.refusedFor.length > 0) this.#complain(draft.refusedFor);
  }

  #changed(): void {
    this.#warn();
    this.#keep();
  }

  #keep(): void {
    if (this.#queued || this.#signed) return;
    this.#queued = true;
    this.#keeping = this.#keeping.then(() => this.#keepNow());
  }

  async #keepNow(): Promise<void> {
    this.#queued = false;
    if (this.#signed) return;
    try {
      await keepDraft({ ...(await this.#filled()), savedAt: Date.now(), refusedFor: this.#refusedFor });
      this.#say(`Kept on this phone, ${timeOf(Date.now())}.`);
    } catch {
      this.#say('This phone has no room left to keep the sheet: send it while there is a signal.');
    }
  }

  async #filled() {
    const { person, path, yardNumber, check } = this.#data;
    const fields = fieldsOf(this.#form);
    const sendId = fields.find(([name]) => name === 'sendId')?.[1] ?? newSendId();
    return {
      sendId,
      person,
      path,
      yardNumber,
      check,
      fields,
      photos: this.#photos,
      signature: await this.#pad.picture(),
    };
  }

  async #sign(): Promise<void> {
    const filled = await this.#filled();
    const wrong = whatIsWrong(filled, this.#data);
    if (wrong.length > 0) return this.#complain(wrong);
    this.#signed = true;
    await this.#keeping;
    const badSafety = badSafetyLines(filled.fields, this.#data);
    try {
      await signSheet({ ...filled, badSafety, action: this.#form.action, signedAt: Date.now(), answer: null });
    } catch {
      this.#signed = false;
      return this.#complain([
        'This phone has no room left to keep the sheet. Send it while there is a signal, with fewer photos.',
      ]);
    }
    void sendWhenThereIsSignal();
    const list = document.createElement('div');
    this.#form.replaceWith(list);
    render(<PhoneSheets person={this.#data.person} />, list);
    document.getElementById('main')?.focus();
    scrollTo(0, 0);
  }

  #startPhotos(): void {
    const input = this.#form.querySelector<HTMLInputElement>('input[name=photos]');
    input?.addEventListener('change', async () => {
      const files = [...(input.files ?? [])].slice(0, MOST_PHOTOS - this.#photos.length);
      input.value = '';
      for (const file of files) this.#photos.push(await shrinkPhoto(file));
      this.#showPhotos();
      this.#keep();
    });
  }

  #showPhotos(): void {
    const list = this.#part('.shots');
    list.replaceChildren(
      ...this.#photos.map((photo, place) => {
        const shot = document.createElement('li');
        const image = document.createElement('img');
        image.src = URL.createObjectURL(new Blob([photo.bytes], { type: photo.mediaType }));
        image.alt = `Picture ${place + 1}`;
        const off = document.createElement('button');
        off.type = 'button';
        off.className = 'button';
        off.textContent = `Take picture ${place + 1} off`;
        off.addEventListener('click', () => {
          this.#photos.splice(place, 1);
          this.#showPhotos();
          this.#keep();
        });
        shot.append(image, off);
        return shot;
      }),
    );
    list.hidden = this.#photos.length === 0;
  }

  #startScanning(): void {
    const scan = labelScanner(this.#part<HTMLVideoElement>('.scan-view'));
    const place = this.#part('.scan');
    if (scan === null) return;
    place.hidden = false;
    place.querySelector('button')?.addEventListener('click', async () => {
      const label = await scan().catch(() => null);
      if (label === null) return;
      const { trailerId, yardNumber } = this.#data;
      if ('number' in label) this.#set('paintedNumber', label.number);
      else this.#set('paintedNumber', label.trailerId === trailerId ? yardNumber : 'another trailer’s label');
      this.#changed();
    });
  }

  /** What is seen at once to be dangerous, while it is being filled in. */
  #warn(): void {
    const fields = fieldsOf(this.#form);
    const place = this.#part('.number-wrong');
    const wrong = wrongNumber(fields.find(([name]) => name === 'paintedNumber')?.[1] ?? '', this.#data);
    place.textContent = wrong;
    place.hidden = wrong === null;
    const bad = badSafetyLines(fields, this.#data);
    const hold = this.#part('.must-not-go');
    hold.textContent =
      bad.length === 0 ? '' : `${this.#data.yardNumber} must not go out. Sign and send: it goes on hold at once.`;
    hold.hidden = bad.length === 0;
  }

  #complain(messages: readonly string[]): void {
    const place = this.#part('.sheet-wrong');
    const list = document.createElement('ul');
    list.append(
      ...messages.map((message) => {
        const line = document.createElement('li');
        line.textContent = message;
        return line;
      }),
    );
    place.querySelector('ul')?.remove();
    place.append(list);
    place.hidden = false;
    place.focus();
  }

  #set(name: string, value: string): void {
    const field = this.#form.elements.namedItem(name);
    if (field instanceof HTMLInputElement) field.value = value;
  }

  #say(words: string): void {
    this.#line.textContent = words;
  }

  #part<Part extends HTMLElement = HTMLElement>(selector: string): Part {
    const part = this.#form.querySelector<Part>(selector);
    if (part === null) throw new Error(`the sheet has no ${selector}`);
    return part;
  }
}

function timeOf(instant: number): string {
  return new Intl.DateTimeFormat('en-US', { hour: 'numeric', minute: '2-digit' }).format(instant);
}

startIsland<CheckSheetData>('check-sheet', (place, data) => {
  wipeOnSignOut(data.person);
  const form = place.closest('form');
  const line = place.querySelector<HTMLElement>('.phone-line');
  // Where nothing can be kept (a private window), the form stays as it came: sent at once, as without script.
  if (form !== null && line !== null) void new PhoneSheet(form, line, data).start().catch(() => undefined);
});
