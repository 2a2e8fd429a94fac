/**
 * Where ranches are kept: SQLite in a data folder, or PostgreSQL, from one set of migrations.
 *
 * <p>Start at {@link haywright.app.store.Store}. The document is the record: every save is one row updated where its
 * revision still stands, and one edit written beside it with the patch that takes it back. Nobody's save is lost: one
 * that comes late and touches other entities is applied again, one that touches the same is answered with both.
 *
 * <p>Times come from the clock that {@code Main} hands in. Knows {@code app.document}, SQL and files; knows nothing of
 * pages or rations.
 */
@NullMarked
package haywright.app.store;

import org.jspecify.annotations.NullMarked;
