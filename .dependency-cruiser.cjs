const stages = ['place', 'aerial', 'tank', 'detector', 'phones', 'ear', 'programme'];

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'engine-is-pure',
      comment: 'the engine imports only itself',
      severity: 'error',
      from: { path: '^src/engine' },
      to: { pathNot: '^src/engine' },
    },
    ...stages.map((s) => ({
      name: `stage-${s}-stands-alone`,
      comment: 'a stage knows mathematics and circuits, never another stage; only the chain composes',
      severity: 'error',
      from: { path: `^src/engine/${s}/` },
      to: { pathNot: [`^src/engine/${s}/`, '^src/engine/(numeric|circuit)/', '^src/engine/[^/]+[.]ts$'] },
    })),
    {
      name: 'mathematics-knows-no-physics',
      severity: 'error',
      from: { path: '^src/engine/numeric' },
      to: { pathNot: '^src/engine/numeric' },
    },
    {
      name: 'units-are-leaves',
      severity: 'error',
      from: { path: '^src/units' },
      to: { pathNot: '^src/units' },
    },
    {
      name: 'parts-are-data',
      severity: 'error',
      from: { path: '^src/parts' },
      to: { pathNot: '^src/parts' },
    },
    {
      name: 'wav-is-a-leaf',
      comment: 'sound files are bytes; whose sound it is they do not know',
      severity: 'error',
      from: { path: '^src/wav' },
      to: { pathNot: '^src/wav' },
    },
    {
      name: 'rpc-is-a-leaf',
      comment: 'a line to another thread knows nothing of what goes over it',
      severity: 'error',
      from: { path: '^src/rpc' },
      to: { pathNot: '^src/rpc' },
    },
    {
      name: 'jobs-imports',
      comment: 'long work for every face, as data in and data out',
      severity: 'error',
      from: { path: '^src/jobs' },
      to: { pathNot: '^src/(jobs|rpc|tell|find|engine|units|parts|set-file)' },
    },
    {
      name: 'set-file-imports',
      severity: 'error',
      from: { path: '^src/set-file' },
      to: { pathNot: ['^src/(set-file|engine|units|parts)', 'node_modules/zod'] },
    },
    {
      name: 'find-imports',
      severity: 'error',
      from: { path: '^src/find' },
      to: { pathNot: '^src/(find|engine|units|parts|set-file)' },
    },
    {
      name: 'tell-imports',
      comment: 'results into words, for every face',
      severity: 'error',
      from: { path: '^src/tell' },
      to: { pathNot: '^src/(tell|find|engine|units|parts|set-file)' },
    },
    {
      name: 'draw-imports',
      comment: 'results into drawings, for every face',
      severity: 'error',
      from: { path: '^src/draw' },
      to: { pathNot: '^src/(draw|engine)' },
    },
    { name: 'nothing-imports-a-face', severity: 'error', from: { pathNot: '^src/cli' }, to: { path: '^src/cli' } },
    {
      name: 'through-the-index',
      comment: 'other parts use the engine through its index',
      severity: 'error',
      from: { pathNot: '^src/engine' },
      to: { path: '^src/engine/(?!index[.]ts$)' },
    },
    {
      name: 'not-to-dev-dep',
      severity: 'error',
      from: { path: '^src' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
};
