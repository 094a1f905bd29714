import { defineConfig, devices } from '@playwright/test';

const quiet = ['--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'];
const executablePath = process.env.CHROMIUM_PATH || '/usr/bin/chromium';

export default defineConfig({
  testDir: '../browser',
  outputDir: '../../test-results',
  // BASE_URL tries the journeys on a server that runs already.
  ...(process.env.BASE_URL ? {} : { globalSetup: '../browser/support/start-server.ts' }),
  timeout: 90_000,
  expect: { timeout: 15_000 },
  fullyParallel: false,
  workers: 1,
  retries: 0,
  forbidOnly: process.env.CI === 'true',
  reporter: process.env.PLAYWRIGHT_JSON_OUTPUT_NAME ? [['list'], ['json']] : [['list']],
  use: {
    baseURL: process.env.BASE_URL ?? 'http://localhost:4310',
    screenshot: 'only-on-failure',
    launchOptions: { executablePath, args: [...quiet, '--host-resolver-rules=MAP rig.test 127.0.0.1'] },
  },
  projects: [
    {
      name: 'desk',
      use: { ...devices['Desktop Chrome'], viewport: { width: 1440, height: 900 } },
      testIgnore: /phone/,
    },
    { name: 'phone', use: { ...devices['Pixel 7'] }, testMatch: /phone/ },
  ],
});
