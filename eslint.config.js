import js from '@eslint/js';
import prettier from 'eslint-config-prettier';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';

const impure = ['Date', 'performance', 'console'];

export default ts.config(
  { ignores: ['dist/', 'test-results/', 'node_modules/'] },
  js.configs.recommended,
  ts.configs.strict,
  ts.configs.stylistic,
  svelte.configs.recommended,
  prettier,
  svelte.configs.prettier,
  {
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  {
    files: ['**/*.ts'],
    languageOptions: {
      parserOptions: {
        project: [
          'engine/tsconfig.json',
          'engine/shell/tsconfig.worker.json',
          'engine/shell/tsconfig.command.json',
          'web/tsconfig.json',
          'web/offline/tsconfig.json',
          'test/tsconfig.json',
        ],
        extraFileExtensions: ['.svelte'],
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/await-thenable': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/no-unnecessary-type-assertion': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { globals: globals.browser, parserOptions: { parser: ts.parser } },
  },
  {
    // Typed arrays are read with `!`: every index there is the loop's own.
    files: ['engine/**/*.ts'],
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'off',
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Pass a seeded generator in.' },
      ],
    },
  },
  {
    files: ['engine/**/*.ts'],
    ignores: ['engine/shell/**'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...impure.map((name) => ({ name, message: 'The engine has no clock and no output of its own.' })),
      ],
    },
  },
  {
    files: ['test/**/*.ts', '*.config.ts', '*.config.js', '.dependency-cruiser.cjs'],
    languageOptions: { globals: globals.node },
    rules: { 'no-console': 'off', '@typescript-eslint/no-non-null-assertion': 'off' },
  },
);
