/**
 * Walks through the pages in a real browser, as a person would: against the real server with a real database in a
 * folder of its own.
 */
package haywright.walk;
