/** The arrows of the design: who may know whom. Type-only imports count as arrows too. */

const never = (name, from, to) => ({ name, severity: 'error', from, to });

const physics = '^engine/(air|circuit|car|duct|disc)/';

module.exports = {
  forbidden: [
    never('no-cycles', {}, { circular: true }),
    never('every-import-resolves', {}, { couldNotResolve: true }),
    never('nothing-imports-tests', { path: '^(engine|web|scenarios)/' }, { path: '^test/' }),

    never('scenarios-are-data', { path: '^scenarios/' }, { pathNot: '^scenarios/.*[.]json$' }),

    never(
      'engine-knows-engine-and-scenarios',
      { path: '^engine/', pathNot: '^engine/shell/' },
      {
        pathNot: [
          '^engine/',
          '^scenarios/(.*[.]json|index[.]ts)$',
          'node_modules/(valibot|d3-dsv|@types/d3-dsv|pure-rand|clipper2-ts|@tarikjabiri/dxf)/',
        ],
      },
    ),
    never(
      'shell-knows-its-platform-too',
      { path: '^engine/shell/' },
      {
        pathNot: [
          '^engine/',
          '^scenarios/(.*[.]json|index[.]ts)$',
          'node_modules/(valibot|d3-dsv|@types/d3-dsv|pure-rand|comlink|tinypool|tsx)/',
        ],
        dependencyTypesNot: ['core'],
      },
    ),
    never(
      'engine-does-not-know-its-shell',
      { path: '^engine/', pathNot: '^engine/shell/' },
      { path: '^engine/shell/', pathNot: '^engine/shell/protocol[.]ts$' },
    ),
    never(
      'only-the-surface-shows-what-crosses-the-door',
      { path: '^engine/', pathNot: '^engine/(shell/|index[.]ts$)' },
      { path: '^engine/shell/protocol[.]ts$' },
    ),
    never(
      'physics-does-not-know-the-stint',
      { path: physics },
      { path: '^engine/(stint|advise|report|evidence|scenario|index[.]ts)' },
    ),

    never(
      'the-stint-knows-neither-advice-nor-reports',
      { path: '^engine/stint/' },
      { path: '^engine/(advise|report|shell)/' },
    ),
    never('advice-knows-no-reports', { path: '^engine/advise/' }, { path: '^engine/(report|shell)/' }),

    never(
      'web-takes-engine-types-and-scenario-values',
      { path: '^web/' },
      {
        path: '^engine/',
        pathNot: ['^engine/index[.]ts$', '^engine/scenario/', '^engine/shell/(worker|trace-worker)[.]ts$'],
      },
    ),
    never(
      'web-takes-only-types-from-the-surface',
      { path: '^web/' },
      { path: '^engine/index[.]ts$', dependencyTypesNot: ['type-only'] },
    ),
    never(
      'web-takes-only-types-from-the-worker',
      { path: '^web/' },
      { path: '^engine/shell/(worker|trace-worker)[.]ts$', dependencyTypesNot: ['type-only'] },
    ),
    never('charts-do-not-know-the-state', { path: '^web/charts/' }, { path: '^web/state/' }),
    never(
      'display-knows-nothing-of-the-page',
      { path: '^web/display/' },
      { path: '^web/', pathNot: '^web/display/' },
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '[.]css$' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'browser', 'import', 'types', 'default'],
      extensions: ['.ts', '.js', '.svelte', '.json', '.d.ts'],
    },
  },
};
