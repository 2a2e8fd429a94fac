package haywright.outlook;

import haywright.ranch.Lot;
import haywright.ranch.LotWeighing;
import haywright.sampling.stock.MassRange;
import haywright.sampling.stock.PartFed;
import haywright.sampling.stock.Stock;
import haywright.workings.Worked;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a lot weighs, by every way it is known, each with its range; none replaces another.
 *
 * @param ways as it was entered first, then what was weighed, oldest first; empty where nothing is known
 * @param used the one that counts everywhere; null where nothing is known
 * @param why it is that one, and whether the others agree
 */
public record LotTons(List<Way> ways, @Nullable Way used, String why) {
    /**
     * One way of knowing.
     *
     * @param on the day of a weighing; null for what was entered
     * @param workings of the kilograms
     */
    public record Way(String how, @Nullable LocalDate on, double kg, MassRange range, Worked workings) {
        /** Half the range, as a share of the mass. */
        public double doubt() {
            return kg > 0 ? (range.highKg() - range.lowKg()) / 2 / kg : 0;
        }
    }

    public LotTons {
        ways = List.copyOf(ways);
    }

    public static LotTons of(Lot lot) {
        var stock = lot.stock();
        var ways = new ArrayList<Way>();
        var asFed = stock.asFedKg();
        if (asFed.isPresent()) {
            ways.add(new Way(
                    howTyped(stock), null, asFed.getAsDouble(), stock.range().orElseThrow(), stock));
        }
        // By their days, however late one was entered; of two on one day the one entered last.
        for (var weighing : lot.weighings().stream()
                .sorted(Comparator.comparing(LotWeighing::on))
                .toList()) {
            weighed(stock, weighing).ifPresent(ways::add);
        }
        if (ways.isEmpty()) {
            return new LotTons(ways, null, "Weight not known yet.");
        }
        var last = ways.get(ways.size() - 1);
        var typed = ways.get(0);
        if (last.on() == null) {
            return new LotTons(ways, last, alone(stock));
        }
        boolean weighedIsBetter = typed.on() != null || last.doubt() <= typed.doubt();
        var used = weighedIsBetter ? last : typed;
        var why = weighedIsBetter
                ? "The newest weighing is used: its range is narrower than the guess."
                : "The entered weight is still used: too few bales were weighed, or they differ too much."
                        + " Weigh more of them.";
        return new LotTons(ways, used, typed.on() != null ? "" : why + apart(typed, last));
    }

    /** Kilograms as fed, by the better of what was entered and what was weighed. */
    public OptionalDouble kg() {
        return used == null ? OptionalDouble.empty() : OptionalDouble.of(used.kg());
    }

    /** Kilograms of one bale of a lot, by the same; empty for what is not baled. */
    public static OptionalDouble baleKg(Lot lot) {
        int bales = lot.stock().bales();
        return bales == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(of(lot).kg().orElseThrow() / bales);
    }

    private static String howTyped(Stock stock) {
        if (stock instanceof PartFed part) {
            return howTyped(part.before()) + ", less what was fed";
        }
        if (stock.bales() > 0) {
            return stock instanceof Stock.Bales bales && bales.baleWeight() == null
                    ? "Counted, at a usual bale weight"
                    : "Counted, at the bale weight entered";
        }
        return stock instanceof Stock.Weighed ? "Scale or load tickets" : "Measured, at its density";
    }

    private static String alone(Stock stock) {
        if (stock instanceof Stock.Weighed || stock instanceof PartFed part && part.before() instanceof Stock.Weighed) {
            return "";
        }
        return stock.bales() > 0
                ? "Not weighed yet. Weigh 5 to 10 bales to narrow it."
                : "Not weighed yet. Tickets of all its loads would narrow it.";
    }

    /** A weighing of bales says nothing once the lot is not baled. */
    private static Optional<Way> weighed(Stock stock, LotWeighing weighing) {
        var whole = weighing.whole();
        if (whole != null) {
            var all = stock instanceof PartFed part && !weighing.on().isAfter(part.on())
                    ? new PartFed(new Stock.Weighed(whole), part.share(), part.on())
                    : new Stock.Weighed(whole);
            return Optional.of(new Way(
                    "All of it weighed, load by load",
                    weighing.on(),
                    all.asFedKg().orElseThrow(),
                    all.range().orElseThrow(),
                    all));
        }
        if (stock.bales() == 0) {
            return Optional.empty();
        }
        var then = weighing.weighing();
        double share = (double) stock.bales() / then.bales();
        var range = then.range();
        return Optional.of(new Way(
                "%d of %d bales weighed".formatted(then.kilograms().size(), then.bales())
                        + (stock.bales() == then.bales() ? "" : ", %d of them there now".formatted(stock.bales())),
                weighing.on(),
                share * then.totalKg(),
                new MassRange(share * range.lowKg(), share * range.highKg(), range.words(), range.source()),
                then));
    }

    private static String apart(Way typed, Way weighed) {
        boolean meet = typed.range().lowKg() <= weighed.range().highKg()
                && weighed.range().lowKg() <= typed.range().highKg();
        return meet ? "" : " The two ranges do not meet: count again, or weigh more bales from all over the lot.";
    }
}
