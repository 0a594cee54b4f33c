globalThis.rungbookOffline = {"site":"a7125106b361","version":"4ce9d1b36702a20f","shell":["index.html","self-test.html","today.html","where-i-stand.html","search.html","if-it-hurts.html","before-you-start.html","cautions.html","if-you-are-stuck.html","words.html","my-people.html"],"language":"en"};
importScripts('theme/offline.js?v=a1b5ccf6');
if (!globalThis.rungbookIs.includes('offline.js=a1b5ccf6')) throw new Error('offline.js: of another version');
