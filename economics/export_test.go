package economics

// Dunlin is the invented boat for tests outside the package.
var Dunlin = dunlin
