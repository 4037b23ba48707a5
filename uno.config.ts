import { defineConfig, presetMini, transformerVariantGroup } from 'unocss';

export default defineConfig({
  presets: [presetMini({ dark: 'media' })],
  transformers: [transformerVariantGroup()],
  // Words that stand in the source for something else: the first is a class of ours, whose box it would take away.
  blocklist: ['contents', 'outline'],
});
