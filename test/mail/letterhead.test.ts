import { expect, test } from 'vitest';
import { Letterhead } from '../../src/mail/letterhead.js';

test('the address is found in a sender written with or without a name', () => {
  for (const from of ['Yard <yard@example.com>', 'yard@example.com', '  Yard  <yard@example.com> ']) {
    expect(Letterhead.of('http://localhost', from).fromAddress).toBe('yard@example.com');
  }
  expect(() => Letterhead.of('http://localhost', 'no address here')).toThrow(RangeError);
});

test('a Message-ID is the notice and the domain we send from, nothing of the moment', () => {
  const letterhead = Letterhead.of('http://localhost', 'yard@mail.example.com');
  expect(letterhead.messageId('0192-a')).toBe('<0192-a@mail.example.com>');
});

test('a yard named with quotes, angle brackets or accents makes a header that can be read', () => {
  const listId = Letterhead.of('http://localhost', 'y@example.com').listId('Łuk & "Sons" <east>', 'luk');
  expect(listId).toBe('uk & Sons east <luk.axlebook.example.com>');
});
