/**
 * What to sample and how to take it true: a lot as it is stored there, and the plan that stands for it.
 *
 * <p>Start at {@link haywright.sampling.SamplingPlan}. In: what is stored there ({@link haywright.sampling.Subject}) and what
 * the answer must be good for ({@link haywright.sampling.Aim}). Out: how many units and increments by each rule, side by
 * side ({@link haywright.sampling.SampleSize}); which ones ({@link haywright.sampling.stock.Picks}, {@link
 * haywright.sampling.field.FieldWalk}); the mass that makes, and the minutes. What is said to people of it is told elsewhere. {@link haywright.sampling.stock.Stock} says
 * how a lot is stacked or stored and what it weighs; {@link haywright.sampling.field.PlotYield} what a field yields.
 *
 * <p>Masses in kg as fed, lengths in meters, spreads in the analyte's own unit. Analytes are named by their id ("cp"):
 * this room lies under {@code forage} and knows {@code chance}, {@code workings} and {@code quantity} only.
 */
@NullMarked
package haywright.sampling;

import org.jspecify.annotations.NullMarked;
