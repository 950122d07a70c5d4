// Which folder may import which: the picture "doors → use cases → store and mail → rules" as rules a tool checks.
// Every comment says what to do instead. test/architecture/arrows.test.ts plants one mistake per rule and wants it caught.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const TOOLBOX = '(units|calendar|statistics|facts|fatigue)';
const PARTS = '(tire|axle|bearing|brake|coupler|suspension|frame|deck|lighting|wear)';
const WHOLE = '(inspection|forecast|history|flags|fit|ranking|handover|notice|money|assess\\.ts$)';
const DOORS = '(pages|api|jobs)';

/** The files that are a use case: those with an injectable class. Groups may keep what only they share beside them. */
const USE_CASES = filesUnder('src/use-cases')
  .filter((file) => file.endsWith('.ts') && readFileSync(file, 'utf8').includes('@Injectable('))
  .map((file) => `^${file.replaceAll('.', '\\.')}$`);

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [
    {
      name: 'rules-stay-pure',
      severity: 'error',
      comment:
        'Rules know no package, no Node module and no other room: hand them what they need as an argument. ' +
        'A date library may be used in rules/calendar only, a statistics library in rules/statistics, each wrapped there.',
      from: { path: '^src/rules/', pathNot: '^src/rules/(calendar|statistics)/' },
      to: { pathNot: '^src/rules/' },
    },
    {
      name: 'calendar-wraps-date-fns-only',
      severity: 'error',
      comment: 'rules/calendar may use date-fns (in UTC) and nothing else from outside the rules.',
      from: { path: '^src/rules/calendar/' },
      to: { pathNot: ['^src/rules/', 'node_modules/date-fns/', 'node_modules/@date-fns/utc/'] },
    },
    {
      name: 'statistics-wraps-distributions-only',
      severity: 'error',
      comment: 'rules/statistics may use the distribution functions of its library and nothing else from outside.',
      from: { path: '^src/rules/statistics/' },
      to: { pathNot: ['^src/rules/', 'node_modules/@stdlib/stats-base-dists-'] },
    },
    {
      name: 'distributions-wrapped-once',
      severity: 'error',
      comment:
        'Only rules/statistics knows the statistics library: ask its distributions.ts, so that one file changes with it.',
      from: { pathNot: ['^src/rules/statistics/', 'node_modules/'] },
      to: { path: 'node_modules/@stdlib/' },
    },
    {
      name: 'toolbox-at-the-bottom',
      severity: 'error',
      comment: 'Units, calendar, statistics and facts import one another at most: move the shared thing down to them.',
      from: { path: `^src/rules/${TOOLBOX}/` },
      to: { path: '^src/rules/', pathNot: `^src/rules/${TOOLBOX}/` },
    },
    {
      name: 'facts-above-units-and-calendar',
      severity: 'error',
      comment: 'Units and calendar must be readable without knowing what a trailer is: they import no facts.',
      from: { path: '^src/rules/(units|calendar|statistics)/' },
      to: { path: '^src/rules/facts/' },
    },
    {
      name: 'load-below-parts',
      severity: 'error',
      comment:
        'Load says what acts on the trailer, never what a part stands: compare the two in the part or in trailer/.',
      from: { path: '^src/rules/load/' },
      to: { path: [`^src/rules/${PARTS}/`, '^src/rules/(trailer|envelope)/', `^src/rules/${WHOLE}`] },
    },
    {
      name: 'envelope-above-load',
      severity: 'error',
      comment: 'The envelope is drawn from the limits of a load alone: what it needs of a part comes in as a limit.',
      from: { path: '^src/rules/envelope/' },
      to: { path: '^src/rules/', pathNot: `^src/rules/(${TOOLBOX}|load|envelope)/` },
    },
    {
      name: 'law-stands-on-the-toolbox',
      severity: 'error',
      comment: 'What the law says depends on nothing of ours: trailer/ and above hold a trailer against it.',
      from: { path: '^src/rules/law/' },
      to: { path: '^src/rules/', pathNot: `^src/rules/(law|${TOOLBOX})/` },
    },
    {
      name: 'law-is-held-against-the-whole',
      severity: 'error',
      comment: 'Load and parts know no law: take the number as an argument, or compare in trailer/ or above.',
      from: { path: [`^src/rules/${PARTS}/`, '^src/rules/load/'] },
      to: { path: '^src/rules/law/' },
    },
    {
      name: 'parts-know-no-other-part',
      severity: 'error',
      comment:
        'One part of the trailer imports no other: what both need goes down to load/, what joins them up to trailer/.',
      from: { path: `^src/rules/${PARTS}/` },
      to: { path: `^src/rules/${PARTS}/`, pathNot: '^src/rules/$1/' },
    },
    {
      name: 'parts-below-the-whole',
      severity: 'error',
      comment: 'A part does not know the trailer it is on: take the numbers it needs as arguments.',
      from: { path: `^src/rules/${PARTS}/` },
      to: { path: ['^src/rules/trailer/', `^src/rules/${WHOLE}`] },
    },
    {
      name: 'trailer-below-the-judgements',
      severity: 'error',
      comment: 'What the parts add up to does not depend on what is due, flagged or told: those look down on it.',
      from: { path: '^src/rules/trailer/' },
      to: { path: `^src/rules/${WHOLE}` },
    },
    {
      name: 'store-and-mail-look-down',
      severity: 'error',
      comment: 'Store and mail are used, they do not use: return the value and let the use case go on with it.',
      from: { path: '^src/(store|mail)/' },
      to: { path: [`^src/(use-cases|http|launch)/`, `^src/${DOORS}/`, '^src/(main|app|app\\.module)\\.ts$'] },
    },
    {
      name: 'store-and-mail-stand-apart',
      severity: 'error',
      comment:
        'The database does not write letters and letters do not read the database: a use case loads, then sends.',
      from: { path: '^src/(store|mail)/' },
      to: { path: '^src/(store|mail)/', pathNot: '^src/$1/' },
    },
    {
      name: 'use-cases-do-not-know-their-caller',
      severity: 'error',
      comment: 'A use case serves every door: take a Caller and return an Outcome, and let the door choose the words.',
      from: { path: '^src/use-cases/' },
      to: { path: ['^src/(http|launch)/', `^src/${DOORS}/`, '^src/(main|app|app\\.module)\\.ts$'] },
    },
    {
      name: 'use-cases-stand-alone',
      severity: 'error',
      comment:
        'Use cases never call use cases: what two share becomes a rule, a store method or a plain function beside them.',
      from: { path: '^src/use-cases/', pathNot: '^src/use-cases/use-cases\\.module\\.ts$' },
      // The second pattern matches nothing; it keeps the list from being empty, which would forbid everything.
      to: { path: [...USE_CASES, '^$'] },
    },
    {
      name: 'doors-use-use-cases',
      severity: 'error',
      comment:
        'Pages, API, jobs and http reach the database and the mail through a use case only: add one, or a field to one.',
      from: { path: `^src/(pages|api|jobs|http)/` },
      to: { path: '^src/(store|mail)/' },
    },
    {
      name: 'doors-stand-alone',
      severity: 'error',
      comment: 'One door does not open another: what pages and API share lives in http/.',
      from: { path: `^src/${DOORS}/` },
      to: { path: `^src/${DOORS}/`, pathNot: '^src/$1/' },
    },
    {
      name: 'islands-run-in-the-browser',
      severity: 'error',
      comment:
        'An island runs in a browser: it may import rules, words, pictures and components, preact and idb. What only the ' +
        'server knows is handed to it as data. (The build also looks at what these import in turn.)',
      from: { path: '^src/pages/islands/' },
      to: {
        pathNot: ['^src/rules/', '^src/pages/(?!assets/)(?!.*\\.controller\\.)', 'node_modules/(preact|idb)/'],
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'http-below-the-doors',
      severity: 'error',
      comment:
        'http/ is what doors share, so it knows none of them: hand it what it needs when the app is put together.',
      from: { path: '^src/http/' },
      to: { path: `^src/${DOORS}/` },
    },
    {
      name: 'launch-stands-beside',
      severity: 'error',
      comment: 'Starting Postgres and migrating know nothing of trailers, and only main.ts (and tests) call them.',
      from: { path: '^src/launch/' },
      to: { path: '^src/', pathNot: '^src/(launch/|config\\.ts$)' },
    },
    {
      name: 'only-main-launches',
      severity: 'error',
      comment:
        'A running service does not start databases: what needs launch/ belongs into main.ts, or a command beside it.',
      from: { path: '^(src|seeds)/', pathNot: '^src/(launch/|(main|plan)\\.ts$)' },
      to: { path: '^src/launch/' },
    },
    {
      name: 'generated-client-stays-in-the-store',
      severity: 'error',
      comment: "Prisma's types end at src/store: the stores speak the facts types of the rules.",
      from: { path: '^(src|seeds)/', pathNot: '^src/store/' },
      to: { path: ['^src/store/generated/', 'node_modules/@prisma/client/'] },
    },
    {
      name: 'service-does-not-lean-on-tests',
      severity: 'error',
      comment: 'Nothing in src or seeds imports from test: move what both need into src.',
      from: { path: '^(src|seeds)/' },
      to: { path: '^test/' },
    },
    {
      name: 'service-runs-without-development-packages',
      severity: 'error',
      comment: 'What src or seeds import must be under "dependencies" of package.json, or it is missing in production.',
      from: { path: '^(src|seeds)/', pathNot: '^src/store/generated/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'every-import-is-found',
      severity: 'error',
      comment: 'The imported file or package does not exist: correct the path, or add the package.',
      from: { path: '^(src|seeds)/' },
      to: { couldNotResolve: true },
    },
    {
      name: 'no-cycles',
      severity: 'error',
      comment: 'These files import each other in a circle: move what they share into a third one below both.',
      from: { path: '^(src|seeds)/', pathNot: '^src/store/generated/' },
      to: { circular: true },
    },
  ],
  options: {
    doNotFollow: { path: ['node_modules', '^src/store/generated/'] },
    // Without this an import of a type only would slip through.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] },
  },
};

function filesUnder(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}
