globalThis.rungbookOffline = {"site":"a7125106b361","version":"cb5754abbe1fd03c","shell":["index.html","self-test.html","today.html","where-i-stand.html","search.html","if-it-hurts.html","before-you-start.html","cautions.html","if-you-are-stuck.html","words.html","my-people.html"],"language":"en"};
importScripts('theme/offline.js?v=b4b74cfc');
if (!globalThis.rungbookIs.includes('offline.js=b4b74cfc')) throw new Error('offline.js: of another version');
