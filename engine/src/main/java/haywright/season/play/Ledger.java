package haywright.season.play;

/**
 * The tons of one winter as they truly are, to the gram: what lay there and what came equals what was fed, lost, sold and left.
 */
public final class Ledger {
    private static final double GRAMS = 1000;

    private final long[] opening;
    private final long[] stock;
    private final long[] bought;
    private final long[] fed;
    private final long[] lost;
    private final long[] sold;

    /** @param kg as fed of each feed */
    public Ledger(double[] kg) {
        stock = new long[kg.length];
        for (int f = 0; f < kg.length; f++) {
            stock[f] = Math.round(kg[f] * GRAMS);
        }
        opening = stock.clone();
        bought = new long[kg.length];
        fed = new long[kg.length];
        lost = new long[kg.length];
        sold = new long[kg.length];
    }

    public void buy(int feed, double kg) {
        long grams = Math.round(kg * GRAMS);
        bought[feed] += grams;
        stock[feed] += grams;
    }

    public void lose(int feed, double share) {
        long grams = Math.min(stock[feed], Math.round(share * stock[feed]));
        lost[feed] += grams;
        stock[feed] -= grams;
    }

    /** Loses so many kg, as far as they lie there. */
    public void spoil(int feed, double kg) {
        long grams = Math.min(stock[feed], Math.round(kg * GRAMS));
        lost[feed] += grams;
        stock[feed] -= grams;
    }

    /** Sells as much as lies there. @return kg that were sold */
    public double sell(int feed, double kg) {
        long grams = Math.min(stock[feed], Math.round(kg * GRAMS));
        sold[feed] += grams;
        stock[feed] -= grams;
        return grams / GRAMS;
    }

    /** Takes as much as lies there. @return kg that were taken */
    public double take(int feed, double kg) {
        long grams = Math.min(stock[feed], Math.round(kg * GRAMS));
        fed[feed] += grams;
        stock[feed] -= grams;
        return grams / GRAMS;
    }

    public double kg(int feed) {
        return stock[feed] / GRAMS;
    }

    public double bought(int feed) {
        return bought[feed] / GRAMS;
    }

    public double fed(int feed) {
        return fed[feed] / GRAMS;
    }

    public double lost(int feed) {
        return lost[feed] / GRAMS;
    }

    /** Grams by which the books of a feed do not close; always 0. */
    public long open(int feed) {
        return opening[feed] + bought[feed] - fed[feed] - lost[feed] - sold[feed] - stock[feed];
    }
}
