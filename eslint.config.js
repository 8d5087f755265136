import js from "@eslint/js";
import formatting from "eslint-config-prettier";
import svelte from "eslint-plugin-svelte";
import globals from "globals";
import ts from "typescript-eslint";
import svelteConfig from "./svelte.config.js";

export default ts.config(
  {
    ignores: [
      "dist/",
      "dist-cli/",
      "dev-dist/",
      "node_modules/",
      ".svelte-check/",
      ".test-results/",
      "coverage/",
      "shared/",
    ],
  },
  // Plain TypeScript and JavaScript are held to the same rules by .oxlintrc.json, in a thirtieth of the time.
  { ignores: ["**/*.ts", "!**/*.svelte.ts", "**/*.mjs", "**/*.js"] },
  js.configs.recommended,
  ...ts.configs.recommended,
  ...svelte.configs.recommended,
  formatting,
  ...svelte.configs.prettier,
  {
    rules: {
      eqeqeq: ["error", "always", { null: "ignore" }],
      "no-var": "error",
      "object-shorthand": "error",
      "prefer-const": "error",
      "@typescript-eslint/consistent-type-imports": ["error", { fixStyle: "inline-type-imports" }],
      // Typed arrays and checked indexes need `!`.
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/no-unused-vars": [
        "error",
        { argsIgnorePattern: "^_", varsIgnorePattern: "^_", caughtErrorsIgnorePattern: "^_" },
      ],
    },
  },
  { files: ["src/app/**"], languageOptions: { globals: globals.browser } },
  {
    files: ["**/*.svelte", "**/*.svelte.ts"],
    languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: [".svelte"], svelteConfig } },
  },
  {
    files: ["**/*.svelte", "**/*.svelte.ts"],
    rules: {
      // Links here are plain ones: there is no router to resolve them.
      "svelte/no-navigation-without-resolve": "off",
      // State is immutable and raw on purpose; maps and sets beside it are working memory.
      "svelte/prefer-svelte-reactivity": "off",
    },
  },
  // The compiler sees undefined names better than the linter does.
  { files: ["**/*.ts", "**/*.svelte"], rules: { "no-undef": "off" } },
);
