/** Where the built page and the plugin's host page are served while journeys run. */
export const ports = { page: 4873, host: 4874 } as const;
