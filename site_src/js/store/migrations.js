// The steps from one shape of the database to the next, oldest first. The version of the database is the number of
// steps taken. A step is never changed once it was released: a new shape is a new step at the end.

/** @type {((database: IDBDatabase, transaction: IDBTransaction) => void)[]} */
export const MIGRATIONS = [
  // 1: settings by name; one draft for each question; runs (mixing, checklists) with their events.
  (database) => {
    database.createObjectStore('settings', { keyPath: 'id' });
    database.createObjectStore('drafts', { keyPath: 'id' });
    database.createObjectStore('runs', { keyPath: 'id' });
  },
];
