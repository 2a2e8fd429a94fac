package haywright.lp;

/** From {@code low} to {@code high}, ends included; either may be infinite. */
public record Range(double low, double high) {}
