globalThis.rungbookOffline = {"site":"a7125106b361","version":"025bf9584ff47c0a","shell":["index.html","self-test.html","today.html","where-i-stand.html","search.html","if-it-hurts.html","before-you-start.html","cautions.html","if-you-are-stuck.html","faults.html","words.html","my-people.html"],"language":"en"};
importScripts('theme/offline.js?v=67b55c2f');
if (!globalThis.rungbookIs.includes('offline.js=67b55c2f')) throw new Error('offline.js: of another version');
