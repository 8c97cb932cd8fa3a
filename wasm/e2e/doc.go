// Package e2e opens the page in a browser, as built and served by the command,
// and uses it as a person would. Its tests are skipped where there is no browser;
// with CI set they may not be.
package e2e
