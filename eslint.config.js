import tseslint from "typescript-eslint";

export default tseslint.config(
  { ignores: ["dist/", "dist-pages/", "out/", "coverage/"] },
  ...tseslint.configs.recommended,
  {
    rules: {
      eqeqeq: "error",
      "prefer-const": "error",
      "@typescript-eslint/consistent-type-imports": [
        "error",
        { fixStyle: "inline-type-imports", disallowTypeAnnotations: false },
      ],
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
    },
  },
  {
    files: ["**/*.ts"],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      "@typescript-eslint/await-thenable": "error",
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/no-misused-promises": "error",
    },
  },
  {
    // A run is data in, data out: the library reads no clock and draws no unseeded number.
    files: ["src/**/*.ts"],
    rules: {
      "no-console": "error",
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "Take a seeded source as an argument." },
        { object: "Date", property: "now", message: "Take the time as an argument." },
        { object: "performance", property: "now", message: "Take the time as an argument." },
      ],
    },
  },
);
