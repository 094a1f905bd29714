/** What the server says when it cannot start, and once it has. */
export const START_SENTENCES = {
  badSetting: (name: string, value: string, wanted: string) =>
    `${name} is ${JSON.stringify(value)}, which does not work: ${wanted}. Correct it and start again.`,
  folderInUse: (folder: string, holder: string) =>
    `The data folder ${folder} is in use by another Rigledger (${holder}). Stop that one, or set DATA_DIR to another folder, and start again.`,
  folderUnusable: (folder: string, why: string) =>
    `The data folder ${folder} cannot be used: ${why}. Set DATA_DIR to a folder this user may write to, and start again.`,
  storeDamaged: (folder: string, why: string) =>
    `The embedded store in ${folder} could not be opened: ${why}. Put back a copy of the folder, or set DATA_DIR to another one.`,
  noPostgres: (server: string, why: string) =>
    `The Postgres server at ${server} cannot be used: ${why}. Check DATABASE_URL and that the server is running, and start again.`,
  notMigrated: (why: string) =>
    `The store could not be brought to this version: ${why}. Nothing was started; put back a copy of the store or the version that wrote it.`,
  portTaken: (host: string, port: number) =>
    `Port ${port} on ${host} is taken by another program. Stop it, or set PORT to another number, and start again.`,
  notBuilt: 'The pages are not built. Start with npm start, which builds them.',
} as const;
