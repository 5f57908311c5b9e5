// The app: src/web becomes dist/web, with a service worker that keeps it for the time without a network.
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'

export default defineConfig({
  root: 'src/web',
  publicDir: 'public',
  plugins: [
    react(),
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      manifest: {
        id: '/',
        name: 'Matchmark',
        short_name: 'Matchmark',
        description: 'Rebuild old geared machinery: the sequence, the build, the record.',
        start_url: '/',
        display: 'standalone',
        background_color: '#E3E9E6',
        theme_color: '#F6F8F5',
        icons: [
          { src: '/mark.svg', sizes: 'any', type: 'image/svg+xml' },
          { src: '/mark-192.png', sizes: '192x192', type: 'image/png' },
          { src: '/mark-512.png', sizes: '512x512', type: 'image/png', purpose: 'any maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,webmanifest}'],
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/(api|books|health|metrics|authority\.crt)(\/|$)/],
        // Books that were opened once can be opened without the shop; where none is kept, the app says so.
        runtimeCaching: [
          {
            urlPattern: ({ url, request }) => request.mode === 'navigate' && /^\/books(\/|$)/.test(url.pathname),
            handler: 'NetworkFirst',
            options: {
              cacheName: 'job books',
              expiration: { maxEntries: 24 },
              networkTimeoutSeconds: 8,
              precacheFallback: { fallbackURL: '/index.html' },
            },
          },
        ],
        cleanupOutdatedCaches: true,
        clientsClaim: true,
        inlineWorkboxRuntime: true,
      },
    }),
  ],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    manifest: true,
    // Nothing inline: the server's policy allows only files of its own.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The worker reads units, plans and draws: it comes when a job is opened.
    chunkSizeWarningLimit: 700,
  },
  server: { host: '127.0.0.1', proxy: { '/api': 'http://127.0.0.1:7410' } },
})
