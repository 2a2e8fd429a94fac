/**
 * The bench: where a group's ration is put together, by hand or by the solver. What is fed now comes first, the better
 * mix second, with what it saves; where there is no ration, what stands in the way and what would lift it.
 *
 * <p>Start at {@link haywright.app.web.bench.BenchPages}. Every figure is the engine's, asked of
 * {@link haywright.outlook.Yard}; nothing is worked out here.
 */
@NullMarked
package haywright.app.web.bench;

import org.jspecify.annotations.NullMarked;
