// What the linter adds to the compiler: the inner folders are pure, so the same log always gives the same answer.
import tseslint from 'typescript-eslint';

const pureFolders = ['model', 'maths', 'sensors', 'normalise', 'digest', 'detect', 'weigh', 'alarms', 'downtime'];

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'reports/**', 'sample-logs/**'] },
  ...tseslint.configs.recommended,
  {
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      eqeqeq: 'error',
      'prefer-const': 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'max-lines': ['error', { max: 500, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    files: pureFolders.map((folder) => `src/${folder}/**/*.ts`),
    rules: {
      'no-console': 'error',
      'no-restricted-globals': [
        'error',
        { name: 'process', message: 'Pure folder: take what you need as an argument.' },
        { name: 'console', message: 'Pure folder: return what is to be said.' },
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: 'Pure folder: the log gives the time, not the clock.' },
        { object: 'Math', property: 'random', message: 'Pure folder: take a seeded generator as an argument.' },
        { object: 'performance', property: 'now', message: 'Pure folder: the log gives the time, not the clock.' },
      ],
      'no-restricted-syntax': [
        'error',
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'Pure folder: the log gives the time, not the clock.',
        },
      ],
    },
  },
);
