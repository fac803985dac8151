// The browser for printing is found or installed by `prepare-browser`, never by the package's own download.
module.exports = { skipDownload: true };
