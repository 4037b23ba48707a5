import { defineConfig, presetMini, transformerVariantGroup } from 'unocss';

export default defineConfig({
  presets: [presetMini({ dark: 'media' })],
  transformers: [transformerVariantGroup()],
});
