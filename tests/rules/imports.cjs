// Which folder may import which. Each rule's comment says what to do instead.
const folders = {
  model: [],
  words: [],
  maths: [],
  sensors: ['model'],
  read: ['model', 'words'],
  normalise: ['model', 'words'],
  digest: ['model', 'maths'],
  detect: ['model', 'maths', 'sensors'],
  weigh: ['model', 'maths'],
  alarms: ['model', 'maths'],
  downtime: ['model', 'maths'],
  files: ['model'],
  history: ['model', 'maths', 'files'],
  report: ['model'],
  intake: ['model', 'read', 'normalise'],
  assemble: ['model', 'maths', 'sensors', 'digest', 'detect', 'weigh'],
};

const onlyDownwards = Object.entries(folders).map(([folder, allowed]) => ({
  name: `${folder}-imports`,
  severity: 'error',
  comment: `src/${folder} may import ${allowed.length ? allowed.join(', ') : 'no other folder'}. Move what is shared into model (types) or maths (functions), or pass it in as data.`,
  from: { path: `^src/${folder}/` },
  to: { path: '^src/', pathNot: `^src/(${[folder, ...allowed].join('|')})/` },
}));

/** Folders with rooms in an order: each room imports, of its own folder, only from those named. */
const rooms = {
  read: {
    sources: [],
    times: ['sources'],
    names: [],
    rows: ['sources', 'times'],
    events: ['sources', 'times', 'rows', 'names'],
    layout: ['sources', 'times', 'names', 'rows', 'events'],
    columns: ['times', 'names', 'rows', 'layout'],
    plant: [],
    survey: ['sources', 'times', 'names', 'layout', 'columns', 'plant'],
  },
  // What several detectors need, from single samples to the use of heat: each from all those above it.
  'detect/shared': Object.fromEntries(
    ['basics', 'blocks', 'readings', 'opens', 'moves', 'cold', 'duty', 'heating'].map((room, at, all) => [
      room,
      all.slice(0, at),
    ]),
  ),
};

const roomsInOrder = Object.entries(rooms).flatMap(([folder, allowedByRoom]) =>
  Object.entries(allowedByRoom).map(([room, allowed]) => ({
    name: `${folder}-${room}-imports`,
    severity: 'error',
    comment: `src/${folder}/${room} may import ${allowed.length ? allowed.join(', ') : 'no other room'} of ${folder}.`,
    from: { path: `^src/${folder}/${room}/` },
    to: { path: `^src/${folder}/`, pathNot: `^src/${folder}/(${[room, ...allowed].join('|')})/` },
  })),
);

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...onlyDownwards,
    ...roomsInOrder,
    {
      name: 'watchers-see-samples-only',
      severity: 'error',
      comment: 'A watcher has no window yet: what it may share lies in basics and blocks.',
      from: { path: '^src/detect/watchers/' },
      to: { path: '^src/detect/shared/', pathNot: '^src/detect/shared/(basics|blocks)/' },
    },
    {
      name: 'no-cycles',
      severity: 'error',
      comment: 'Two files that need each other are one file, or share a third.',
      from: {},
      to: { circular: true },
    },
    {
      name: 'src-never-tests',
      severity: 'error',
      comment: 'What the program needs lives in src.',
      from: { path: '^src/' },
      to: { path: '^tests/' },
    },
    {
      name: 'nothing-is-kept-for-later',
      severity: 'error',
      comment: 'A module of src is reached from the program or from the script of the page.',
      from: { path: '^src/(cli|report/page/main)\\.ts$' },
      to: { path: '^src/', pathNot: '^src/(cli|report/page/main)\\.ts$', reachable: false },
    },
    {
      name: 'one-detector-alone',
      severity: 'error',
      comment: 'A detector never imports another; what both need goes to maths or to src/detect/shared.',
      from: { path: '^src/detect/(watchers|judges)/([^/]+)\\.ts$' },
      to: { path: '^src/detect/(watchers|judges)/', pathNot: '^src/detect/(watchers|judges)/$2\\.ts$' },
    },
    {
      name: 'commands-are-the-edge',
      severity: 'error',
      comment: 'Only cli.ts imports commands.',
      from: { path: '^src/', pathNot: '^src/(cli\\.ts|commands/)' },
      to: { path: '^src/commands/' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: 'node_modules' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.js'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'node'],
    },
  },
};
