package haywright.forage.book;

import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.Marginal;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How far lots of a feed differ that nobody measured: as far as the widest of its class, and where nobody measured any of
 * the class, as the widest feed that is no forage. Nothing is certain for want of a figure. Minerals are made to a
 * guarantee: 5 % of the value (judgment).
 */
public final class WidestSpread {
    static final String MARK = "nobody measured it: the widest spread of such feeds";

    private static final double OF_A_GUARANTEE = 0.05;
    private static final Source SOURCE =
            Source.judgment("How feed lots of a class scatter where nobody measured this one");

    private WidestSpread() {}

    /** @param known cells that somebody printed for it; kept */
    static Prior prior(FeedBook.Row row, List<Prior.Cell> known) {
        boolean guaranteed = row.feedClass() == FeedClass.MINERAL || row.feedClass() == FeedClass.NPN;
        var widest = guaranteed ? Map.<Analyte, Double>of() : Widest.of(row.feedClass());
        var cells = new ArrayList<>(known);
        row.composition().values().forEach((analyte, figure) -> {
            boolean isKnown = known.stream().anyMatch(c -> c.analyte() == analyte);
            var relative = guaranteed ? Double.valueOf(OF_A_GUARANTEE) : widest.get(analyte);
            if (!isKnown
                    && relative != null
                    && figure.value() > 0
                    && (analyte.isMeasured() || analyte == Analyte.TDN)) {
                cells.add(new Prior.Cell(
                        analyte, new Marginal(figure.value(), relative * figure.value(), false), MARK, "", SOURCE));
            }
        });
        return Prior.ofBook(row, cells);
    }

    /** As a share of the value, by class; built when first asked for. */
    private static final class Widest {
        private static final Map<FeedClass, Map<Analyte, Double>> BY_CLASS = new EnumMap<>(FeedClass.class);
        private static final Map<Analyte, Double> OF_NO_FORAGE = new EnumMap<>(Analyte.class);

        static {
            for (var kind : Prior.all()) {
                take(kind);
            }
            for (var row : FeedBook.published().rows()) {
                BookSpread.prior(row).ifPresent(Widest::take);
            }
        }

        private static void take(Prior prior) {
            var own = BY_CLASS.computeIfAbsent(prior.feedClass(), c -> new EnumMap<>(Analyte.class));
            for (var cell : prior.cells()) {
                double relative =
                        cell.marginal().standardDeviation() / cell.marginal().mean();
                own.merge(cell.analyte(), relative, Math::max);
                if (!prior.feedClass().isForage()) {
                    OF_NO_FORAGE.merge(cell.analyte(), relative, Math::max);
                }
            }
        }

        static Map<Analyte, Double> of(FeedClass feedClass) {
            var widest = new EnumMap<Analyte, Double>(OF_NO_FORAGE);
            widest.putAll(BY_CLASS.getOrDefault(feedClass, Map.of()));
            return widest;
        }
    }

    public static boolean isWidest(Prior.Cell cell) {
        return cell.mark().equals(MARK);
    }

    public static Optional<Marginal> around(Prior prior, Analyte analyte, double value) {
        int i = prior.index(analyte);
        if (i < 0 || !(value > 0)) {
            return Optional.empty();
        }
        var kind = prior.cells().get(i).marginal();
        double sd = kind.log() ? kind.sd() : kind.sd() / kind.center() * value;
        return Optional.of(Marginal.ofScale(new Marginal(value, sd, kind.log()).withMean(value), sd, kind.log()));
    }
}
