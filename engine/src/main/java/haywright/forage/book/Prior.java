package haywright.forage.book;

import haywright.chance.Conditional;
import haywright.chance.Gaussian;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.Marginal;
import haywright.forage.energy.AdfEquation;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What a lot of one kind is likely made of before anybody tests it: a mean, a spread and how the analytes go together.
 * Most of it is judgment, and every cell says so. The published spreads hold sampling and laboratory noise, which is not
 * taken out of them.
 *
 * <p>TDN is among the analytes only of kinds that have no line from fiber to TDN: elsewhere it would count fiber twice.
 */
public final class Prior {
    private static final PublishedTable KINDS = PublishedTable.read(Prior.class, "prior_kinds.csv");
    private static final PublishedTable CELLS = PublishedTable.read(Prior.class, "priors.csv");
    private static final Map<List<Analyte>, Double> CORRELATION = correlation();

    private final String id;
    private final String words;
    private final FeedClass feedClass;
    private final List<Cell> cells;
    private final boolean together;
    private final double[][] correlation;
    private final Gaussian gaussian;

    /**
     * One analyte of a kind.
     *
     * @param mark how firmly it is known, in words: "judgment", "judgment over figures that were read"
     * @param leansOn the figures it leans on; empty where there are none
     */
    public record Cell(Analyte analyte, Marginal marginal, String mark, String leansOn, Source source) {}

    private Prior(PublishedTable.Row kind) {
        this(
                kind.text("kind"),
                kind.text("words"),
                feedClass(kind),
                CELLS.rows().stream()
                        .filter(r -> r.text("kind").equals(kind.text("kind")))
                        .map(Prior::cell)
                        .filter(c -> c.analyte != Analyte.TDN
                                || AdfEquation.usual(feedClass(kind)).isEmpty())
                        .toList(),
                kind.text("correlated").equals("yes"));
    }

    private Prior(String id, String words, FeedClass feedClass, List<Cell> cells, boolean together) {
        this.id = id;
        this.words = words;
        this.feedClass = feedClass;
        this.cells = List.copyOf(cells);
        this.together = together;
        int n = cells.size();
        correlation = new double[n][n];
        var mean = new double[n];
        var covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            var bell = cells.get(i).marginal;
            mean[i] = bell.onScale(bell.center());
            for (int j = 0; j < n; j++) {
                var pair = List.of(cells.get(i).analyte, cells.get(j).analyte);
                correlation[i][j] = i == j ? 1 : together ? CORRELATION.getOrDefault(pair, 0.0) : 0;
                covariance[i][j] =
                        correlation[i][j] * bell.sd() * cells.get(j).marginal.sd();
            }
        }
        gaussian = new Gaussian(mean, covariance);
    }

    /** Every kind there is. */
    public static Collection<Prior> all() {
        return Kinds.ALL;
    }

    /** By the kind's own id: {@code dormant_range}. */
    public static Optional<Prior> named(String id) {
        return Kinds.ALL.stream().filter(p -> p.id.equals(id)).findFirst();
    }

    /**
     * What a feed's lots are likely made of. The spread is that of its kind: the one that names the feed's group in the
     * book, else the one that stands for the whole class. The middle is what its row of the book prints, and what the row
     * does not print follows what it prints as lots of the kind hang together, by half, since a row is no lot. Without a
     * row the kind's own middle stands. A feed without a kind has the spread between samples that its row prints, or
     * another row of the same feed, and for the rest, or where there is none, the widest of its class, marked. Empty only for a
     * feed without a row and a kind.
     */
    public static Optional<Prior> of(FeedClass feedClass, Optional<FeedBook.Row> row) {
        var kind = idOf(feedClass, row).flatMap(Prior::named);
        return kind.isPresent()
                ? row.map(r -> kind.get().around(r)).or(() -> kind)
                : row.map(r -> WidestSpread.prior(
                                r, BookSpread.prior(r).map(Prior::cells).orElse(List.of())))
                        .filter(prior -> !prior.cells().isEmpty());
    }

    /** The id of the kind that lends the spread; empty where none stands for the class. */
    public static Optional<String> idOf(FeedClass feedClass, Optional<FeedBook.Row> row) {
        var group = row.or(() -> FeedBook.published().usual(feedClass))
                .map(FeedBook.Row::group)
                .orElse("");
        return kind(feedClass, group).or(() -> kind(feedClass, ""));
    }

    /**
     * Of a lot, or a feed for sale, by the row it names. Where it names none and lots of the class range from young to
     * ripe, as alfalfa hay does, the kind that spans all of them stands, and it is not moved to one ripeness.
     *
     * @param bookRow the row's id; empty where nothing more than the class is said
     */
    public static Optional<Prior> of(FeedClass feedClass, String bookRow) {
        return whenNothingIsSaid(feedClass)
                .filter(kind -> bookRow.isBlank())
                .or(() -> of(feedClass, FeedBook.published().rowFor(bookRow, feedClass)));
    }

    /** Whether a lot of which only the class is said can be of any ripeness, as alfalfa hay can. */
    static boolean isOfAnyRipeness(FeedClass feedClass) {
        return whenNothingIsSaid(feedClass).isPresent();
    }

    private static Optional<Prior> whenNothingIsSaid(FeedClass feedClass) {
        return KINDS.rows().stream()
                .filter(k -> feedClass(k) == feedClass
                        && k.some("when_nothing_is_said").isPresent())
                .findFirst()
                .flatMap(k -> named(k.text("kind")));
    }

    static Prior ofBook(FeedBook.Row row, List<Cell> cells) {
        return new Prior(row.id(), row.feed(), row.feedClass(), cells, false);
    }

    private Prior around(FeedBook.Row row) {
        var figures = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        FeedBook.published()
                .dryMatterRow(feedClass)
                .ifPresent(lender -> figures.putAll(Map.of(
                        Analyte.DM,
                        Objects.requireNonNull(lender.composition().values().get(Analyte.DM)))));
        figures.putAll(row.composition().values());
        var which = IntStream.range(0, cells.size())
                .filter(i -> figures.containsKey(cells.get(i).analyte))
                .toArray();
        if (which.length == 0) {
            return this;
        }
        var middles = new double[which.length];
        var asFarAsLots = new double[which.length][which.length];
        for (int k = 0; k < which.length; k++) {
            var cell = cells.get(which[k]);
            var known = Objects.requireNonNull(figures.get(cell.analyte));
            middles[k] = cell.marginal.withMean(known.value());
            asFarAsLots[k][k] = gaussian.covariance(which[k], which[k]);
        }
        var follows = new Conditional(gaussian, which, middles, asFarAsLots);
        var moved = new ArrayList<Cell>();
        for (int i = 0; i < cells.size(); i++) {
            var cell = cells.get(i);
            int k = Arrays.binarySearch(which, i);
            var bell = Marginal.ofScale(k < 0 ? follows.mean(i) : middles[k], cell.marginal.sd(), cell.marginal.log());
            moved.add(
                    k < 0
                            ? new Cell(cell.analyte, bell, cell.mark, cell.leansOn, cell.source)
                            : new Cell(
                                    cell.analyte,
                                    bell,
                                    "middle from the feed book, spread " + cell.mark,
                                    "feed book row " + row.id(),
                                    cell.source));
        }
        return new Prior(id, words, feedClass, moved, together);
    }

    private static Optional<String> kind(FeedClass feedClass, String group) {
        return KINDS.rows().stream()
                .filter(k -> feedClass(k) == feedClass)
                .filter(k -> List.of(k.text("book_groups").split(";")).contains(group))
                .findFirst()
                .map(k -> k.text("kind"));
    }

    public String id() {
        return id;
    }

    public String words() {
        return words;
    }

    public FeedClass feedClass() {
        return feedClass;
    }

    /** In the order of the vector. */
    public List<Cell> cells() {
        return cells;
    }

    /** The whole, each analyte on its own scale. */
    public Gaussian gaussian() {
        return gaussian;
    }

    /** How analytes i and j go together, −1 to 1. */
    public double correlation(int i, int j) {
        return correlation[i][j];
    }

    /** Where an analyte stands in the vector; −1 where the kind says nothing of it. */
    public int index(Analyte analyte) {
        for (int i = 0; i < cells.size(); i++) {
            if (cells.get(i).analyte == analyte) {
                return i;
            }
        }
        return -1;
    }

    private static FeedClass feedClass(PublishedTable.Row kind) {
        return FeedClass.valueOf(kind.text("class").toUpperCase(Locale.ROOT));
    }

    private static Cell cell(PublishedTable.Row row) {
        return new Cell(
                Analyte.named(row.text("analyte")),
                new Marginal(
                        row.number("center").orElseThrow(),
                        row.number("sd").orElseThrow(),
                        row.text("scale").equals("log")),
                row.text("tier"),
                row.text("leans_on"),
                Source.judgment(row.text("source")));
    }

    private static Map<List<Analyte>, Double> correlation() {
        var correlation = new HashMap<List<Analyte>, Double>();
        for (var row : PublishedTable.read(Prior.class, "prior_correlation.csv").rows()) {
            var one = Analyte.named(row.text("analyte"));
            var other = Analyte.named(row.text("with"));
            double r = row.number("r").orElseThrow();
            correlation.put(List.of(one, other), r);
            correlation.put(List.of(other, one), r);
        }
        return Map.copyOf(correlation);
    }

    /** Built when first asked for. */
    private static final class Kinds {
        static final List<Prior> ALL = KINDS.rows().stream().map(Prior::new).toList();
    }
}
