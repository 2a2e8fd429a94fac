package haywright.lp;

/**
 * What a program answers: a best plan, in whole numbers where it has whole columns; limits that no plan can keep
 * together; no best plan at all; or that the budget was spent first.
 */
public sealed interface Outcome permits Optimum, Whole, Infeasible, Unbounded, Stopped {}
