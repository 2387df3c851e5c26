import js from "@eslint/js";
import globals from "globals";

export default [
  js.configs.recommended,
  {
    files: ["**/*.js"],
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      "no-undef": "off", // the types say what there is
      eqeqeq: "error",
      "no-var": "error",
      "prefer-const": "error",
      "no-shadow": "error",
      "object-shorthand": "error",
      "arrow-body-style": "error",
    },
  },
  { files: ["yarnsheets/**"], languageOptions: { globals: globals.browser } },
];
