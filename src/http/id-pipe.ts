import { Injectable, type PipeTransform } from '@nestjs/common';
import { Refusal } from './refusal.js';

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** Lets through what can be an id of the yard; an address that holds anything else leads nowhere. */
@Injectable()
export class IdPipe implements PipeTransform<unknown, string> {
  transform(value: unknown): string {
    if (typeof value === 'string' && UUID.test(value)) return value.toLowerCase();
    throw new Refusal({ kind: 'not-found', what: 'page' });
  }
}
