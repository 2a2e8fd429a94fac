/**
 * The topics: one record in, one record out, one function. Command, HTTP and the OpenAPI document are three readings of
 * the same table.
 *
 * <p>Start at {@link haywright.app.compute.topic.Topics}. {@link haywright.app.compute.Compute} takes JSON and gives JSON;
 * names and units of its keys come from {@link haywright.app.compute.shape.Key} on the records' components, so that reading,
 * writing and the schema cannot disagree.
 *
 * <p>Nothing is worked out here: each function calls the engine. Knows the engine, the ranch document and
 * Jackson; knows nothing of files or pages.
 */
@NullMarked
package haywright.app.compute;

import org.jspecify.annotations.NullMarked;
