/**
 * How records become JSON and back, and the schema of both: names and units come from {@link haywright.app.compute.shape.Key}
 * on the records' components, so that reading, writing and schema cannot disagree.
 */
@NullMarked
package haywright.app.compute.shape;

import org.jspecify.annotations.NullMarked;
