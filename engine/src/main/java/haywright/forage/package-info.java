/**
 * What the laboratory's numbers mean: reports checked line by line, the published equations, the feed book, and the
 * {@link haywright.forage.Composition} of a lot that comes out of them.
 *
 * <p>In: a {@link haywright.forage.LabReport} as typed and a row of the feed book. Out: a composition on dry matter,
 * every value with its origin.
 *
 * <p>Concentrations are per cent or ppm of dry matter, energy is Mcal per kg of dry matter. Knows {@code sampling},
 * {@code chance}, {@code workings} and {@code quantity}; knows nothing of cattle, files or pages.
 */
@NullMarked
package haywright.forage;

import org.jspecify.annotations.NullMarked;
