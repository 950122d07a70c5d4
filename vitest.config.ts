export { default } from './test/vitest.config.js';
