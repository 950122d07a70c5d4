import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../src/rules/calendar/civil-date.js';
import { DEFAULT_CHECK_KINDS } from '../../src/rules/inspection/default-check-kinds.js';
import { CorrectCheck } from '../../src/use-cases/checks/correct-check.js';
import { RecordCheck } from '../../src/use-cases/checks/record-check.js';
import { OpenHold } from '../../src/use-cases/holds/open-hold.js';
import type { RecordCheckInput } from '../../src/use-cases/input/check-input.js';
import { ShowCheckSheet } from '../../src/use-cases/show/show-check-sheet.js';
import { AddTrailer } from '../../src/use-cases/trailers/add-trailer.js';
import { UpdateTrailer } from '../../src/use-cases/trailers/update-trailer.js';
import { aBuild, TODAY, tiresOn } from '../support/trailers.js';
import { must, refusal, refusedFields, startUseCases, type UseCases, type Yard } from '../support/yard.js';

const OTHER_SENDING = '018f6f2e-6b1a-7c55-9d2e-0f6a5b1c2d3f';
const PNG = { mediaType: 'image/png', bytes: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a) };

let service: UseCases;
let yard: Yard;
let other: Yard;
let numbers = 0;

beforeAll(async () => {
  service = await startUseCases();
  const checkKinds = DEFAULT_CHECK_KINDS.filter(({ code }) => code === 'hub-repack');
  yard = await service.makeYard({ checkKinds });
  other = await service.makeYard({ checkKinds, name: 'Ostrow Fencing' });
});
afterAll(() => service.close());

async function aTrailer(of: Yard = yard): Promise<{ trailerId: string; yardNumber: string }> {
  numbers += 1;
  const yardNumber = `P-${numbers}`;
  const input = { yardNumber, build: aBuild(), parts: tiresOn(2) };
  return { yardNumber, trailerId: (await must(service.get(AddTrailer).run(of.as('shop'), input))).trailerId };
}

function aSheet(trailerId: string, wish: Partial<RecordCheckInput> = {}, of: Yard = yard): RecordCheckInput {
  return {
    trailerId,
    checkKindId: of.checkKindId('hub-repack'),
    doneOn: TODAY,
    lines: [{ code: 'races', result: 'ok', position: '1L', measured: null }],
    // Any UUID does; the trailer's own tells the sheets of these tests apart.
    sendId: trailerId,
    ...wish,
  };
}

const record = (input: RecordCheckInput, of: Yard = yard) => must(service.get(RecordCheck).run(of.as('hand'), input));
const kept = (trailerId: string) =>
  service.sql('select id, note from check_record where trailer_id = $1 and not withdrawn', [trailerId]);
const seenNow = async (trailerId: string) =>
  (
    await must(
      service.get(ShowCheckSheet).run(yard.as('hand'), { trailerId, checkKindId: yard.checkKindId('hub-repack') }),
    )
  ).seen;

describe('a check sheet with a send id', () => {
  it('is recorded once, also when it arrives twice at once, with its photos and signature', async () => {
    const { trailerId } = await aTrailer();
    const sheet = aSheet(trailerId, { photos: [PNG], signature: PNG, note: 'two seals' });
    const [first, second] = await Promise.all([record(sheet), record(sheet)]);
    expect(second.checkRecordId).toBe(first.checkRecordId);
    expect([first.sentAgain, second.sentAgain].sort()).toEqual([false, true]);
    expect(await kept(trailerId)).toHaveLength(1);
    const pictures = await service.sql(
      'select is_signature from check_photo where check_record_id = $1 order by is_signature',
      [first.checkRecordId],
    );
    expect(pictures).toEqual([{ is_signature: false }, { is_signature: true }]);
  });

  it('puts the trailer on hold once, and says so however often it is sent', async () => {
    const { trailerId } = await aTrailer();
    const safety = DEFAULT_CHECK_KINDS.find(({ code }) => code === 'hub-repack')?.lines.find((line) => line.safety);
    const lines = [{ code: safety?.code ?? '', result: 'bad' as const, position: null, measured: null }];
    const first = await record(aSheet(trailerId, { lines }));
    expect(first.holdId).not.toBeNull();
    expect((await record(aSheet(trailerId, { lines }))).holdId).toBe(first.holdId);
    expect(await service.sql('select id from hold where trailer_id = $1', [trailerId])).toHaveLength(1);
  });

  it('stays one after somebody has mended or taken back what it became', async () => {
    const { trailerId } = await aTrailer();
    const { checkRecordId } = await record(aSheet(trailerId));
    const { checkKindId: _kind, sendId: _id, ...said } = aSheet(trailerId, { note: 'mended' });
    await must(service.get(CorrectCheck).run(yard.as('shop'), { ...said, checkRecordId }));
    expect(await record(aSheet(trailerId))).toMatchObject({ checkRecordId, sentAgain: true });
    expect(await kept(trailerId)).toHaveLength(2);
  });

  it('is not doubled, and not dropped in silence, when it says something else the second time', async () => {
    const { trailerId } = await aTrailer();
    await record(aSheet(trailerId));
    const again = service.get(RecordCheck).run(yard.as('hand'), aSheet(trailerId, { note: 'and a seal' }));
    expect(await refusal(again)).toMatchObject({ kind: 'conflict', message: expect.stringMatching(/once more/) });
    const elsewhere = await aTrailer();
    const there = service.get(RecordCheck).run(yard.as('hand'), aSheet(elsewhere.trailerId, { sendId: trailerId }));
    expect(await refusal(there)).toMatchObject({ kind: 'conflict' });
    await record(aSheet(trailerId, { note: 'and a seal', sendId: elsewhere.trailerId }));
    expect(await kept(trailerId)).toHaveLength(2);
  });

  it('is a check of its own when only the id differs: the same was found twice', async () => {
    const { trailerId } = await aTrailer();
    await record(aSheet(trailerId));
    const second = await record(aSheet(trailerId, { sendId: OTHER_SENDING }));
    expect(second).toMatchObject({ sentAgain: false, besides: [expect.any(String)] });
    expect(await kept(trailerId)).toHaveLength(2);
  });

  it('means nothing in another yard', async () => {
    const mine = await aTrailer();
    await record(aSheet(mine.trailerId));
    const { trailerId } = await aTrailer(other);
    const sheet = aSheet(trailerId, { sendId: mine.trailerId }, other);
    expect((await record(sheet, other)).sentAgain).toBe(false);
  });
});

describe('a sheet that says what it showed when it was opened', () => {
  it('is told of a hold, a record, a new number and a sale since, and is kept beside them', async () => {
    const { trailerId, yardNumber } = await aTrailer();
    const seen = await seenNow(trailerId);
    const shop = yard.as('shop');
    const { checkRecordId } = await record(aSheet(trailerId, { sendId: null, note: 'by the shop' }));
    const { holdId } = await must(service.get(OpenHold).run(shop, { trailerId, reason: 'tongue cracked' }));
    await must(
      service.get(UpdateTrailer).run(yard.as('owner'), { trailerId, yardNumber: `${yardNumber}-new`, status: 'sold' }),
    );
    const { changed } = await record(aSheet(trailerId, { seen, paintedNumber: yardNumber }));
    expect(changed).toEqual([
      { kind: 'renumbered', from: yardNumber, to: `${yardNumber}-new` },
      { kind: 'gone', status: 'sold' },
      { kind: 'held', holdId, reason: 'tongue cracked', openedOn: TODAY },
      { kind: 'checked', checkRecordId, doneOn: TODAY, outcome: 'pass' },
    ]);
    expect(await kept(trailerId)).toHaveLength(2);
  });

  it('is told nothing of itself when it is sent again, and nothing of what it had seen', async () => {
    const { trailerId } = await aTrailer();
    await record(aSheet(trailerId, { sendId: null, doneOn: addDays(TODAY, -3) }));
    await must(service.get(OpenHold).run(yard.as('shop'), { trailerId, reason: 'known before' }));
    const sheet = aSheet(trailerId, { seen: await seenNow(trailerId) });
    expect((await record(sheet)).changed).toEqual([]);
    expect((await record(sheet)).changed).toEqual([]);
  });
});

describe('the number read off the trailer', () => {
  it('must be its own, however it is written', async () => {
    const { trailerId, yardNumber } = await aTrailer();
    const wrong = aSheet(trailerId, { paintedNumber: `${yardNumber}1` });
    const fields = await refusedFields(service.get(RecordCheck).run(yard.as('hand'), wrong));
    expect(fields.paintedNumber).toMatch(/The two look alike/);
    expect(await kept(trailerId)).toEqual([]);
    await record(aSheet(trailerId, { paintedNumber: yardNumber.toLowerCase().replace('-', ' ') }));
    expect(await kept(trailerId)).toHaveLength(1);
  });
});
