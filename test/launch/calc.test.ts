import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../src/launch/project-root.js';
import { buildService } from '../support/service-process.js';

const CALC = join(projectRoot(), 'dist', 'src', 'calc.js');

/** The command line as `npm run calc` has it: compiled, in a process that knows of no database. */
function calc(args: readonly string[], input = '') {
  const command = ['--disable-warning=ExperimentalWarning', CALC, ...args];
  const env = { PATH: process.env.PATH };
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { input, env, encoding: 'utf8' });
  return { status, stdout, stderr };
}

describe('calc', () => {
  // Compiles what has changed; on a busy machine that takes a while.
  beforeAll(buildService, 300_000);

  it('lists every computation with what it answers', () => {
    const { status, stdout } = calc(['list']);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^tongue-weight +What rests on the coupler/m);
    expect(stdout).toMatch(/^life-fit +The Weibull law/m);
  });

  it('reads JSON from standard input and answers in JSON', () => {
    const example = { weights: [{ massKg: 1000, fromCouplerM: 3 }], axleCentreM: 4 };
    const { status, stdout, stderr } = calc(['tongue-weight'], JSON.stringify(example));
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    // A quarter of 1,000 kg, 9.80665 m/s².
    expect(JSON.parse(stdout)).toEqual({
      tongueN: expect.closeTo(2451.6625, 9),
      tongueShare: expect.closeTo(0.25, 12),
      axleGroupN: expect.closeTo(7354.9875, 9),
    });
  });

  it('says what goes in and comes out, with an example and a source', () => {
    const { status, stdout } = calc(['build-load-check', '--schema']);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      name: 'build-load-check',
      source: expect.stringContaining('statics'),
      input: { type: 'object', required: expect.arrayContaining(['build', 'load']), additionalProperties: false },
      output: { type: 'object', properties: { tongueN: { description: expect.stringContaining('N') } } },
      example: { load: { balancePointM: 4.2672 } },
    });
  });

  it('works its example out', () => {
    const { status, stdout } = calc(['load-index', '--example']);
    expect({ status, answer: JSON.parse(stdout) }).toEqual({ status: 0, answer: { massKg: 1600 } });
  });

  it('names each bad field with its fix, as a mistake of whoever asked', () => {
    const { status, stdout, stderr } = calc(['load-index'], '{"loadIndex": "twelve", "massLb": 3}');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^loadIndex: Give this as a (finite|whole) number\.$/m);
    expect(stderr).toMatch(/^massLb: There is no field of this name\. Leave it out, or use one of: loadIndex\.$/m);
  });

  it('says when the input is no JSON', () => {
    const { status, stdout, stderr } = calc(['load-index'], '{"loadIndex": ');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^The input is not JSON: /);
  });

  it('of a name that nobody has, suggests those that share a word', () => {
    const { status, stdout, stderr } = calc(['weight-tongue'], '{}');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^There is no computation "weight-tongue"\. Is it one of these\?\n {2}tongue-weight$/m);
  });
});
