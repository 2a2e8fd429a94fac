package haywright.app.web.lots;

import haywright.app.web.Form;
import haywright.app.web.form.Field;
import haywright.app.web.form.Fields;
import haywright.app.words.Show;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Bin;
import haywright.sampling.stock.LooseStack;
import haywright.sampling.stock.PartFed;
import haywright.sampling.stock.Pile;
import haywright.sampling.stock.Rick;
import haywright.sampling.stock.RoundPyramid;
import haywright.sampling.stock.Sacks;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UprightSilo;
import haywright.sampling.stock.UsualBale;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How a lot is stored there: each kind of stock with the boxes that it is measured by. */
public final class StockForm {
    /** A list of the ranch's fields; they are not known here. */
    public static final Field FIELD =
            Field.choice("field", "Field", "", List.of()).needed("Choose the field.");

    private static final int MOST_USUAL = 20_000;
    private static final UUID NONE = new UUID(0, 0);

    private StockForm() {}

    /** What a new one is measured with unless it is changed: a safe slope, nothing fed, a level top. */
    static Map<String, String> usual(StockKind kind) {
        return switch (kind) {
            case PILE -> Map.of("slope", "3");
            case UPRIGHT_SILO -> Map.of("fed", "0");
            case BIN -> Map.of("cone", "0");
            default -> Map.of();
        };
    }

    /** Whether round bales may lie there: of those it is known what weather does to them. */
    /** Whether feed may be taken off an open face. */
    public static boolean hasFace(StockKind kind) {
        return switch (kind) {
            case BUNKER, PILE, BAG, UPRIGHT_SILO, WEIGHED -> true;
            default -> false;
        };
    }

    public static boolean mayBeRound(StockKind kind) {
        return kind == StockKind.BALES || kind == StockKind.PYRAMID;
    }

    static Map<String, String> known(Stock stock) {
        if (stock instanceof PartFed part) {
            return known(part.before());
        }
        var known = new LinkedHashMap<>(StockKind.of(stock).fields().known((Record) stock));
        if (stock instanceof Stock.Standing standing) {
            known.put(FIELD.name(), standing.field().toString());
        }
        return known;
    }

    /**
     * What was put up is shown and read again; where that is unchanged, what was fed of it since still counts.
     *
     * @param before the stock as it was; null for a new one
     */
    static Optional<Stock> read(Form form, StockKind kind, @Nullable Stock before, Ranch ranch, LocalDate today) {
        if (before instanceof PartFed part) {
            return read(form, kind, part.before(), ranch, today)
                    .map(stock -> stock.equals(part.before()) ? part : stock);
        }
        Map<String, Object> given = kind == StockKind.STANDING ? Map.of(FIELD.name(), field(form, ranch)) : Map.of();
        var stock = read(kind.fields(), form, given, before, today).map(Stock.class::cast);
        if (stock.orElse(null) instanceof Stock.Bales bales) {
            ask(form, bales, before instanceof Stock.Bales b ? b : null);
        }
        return stock;
    }

    private static <R extends Record> Optional<R> read(
            Fields<R> fields, Form form, Map<String, Object> given, @Nullable Stock before, LocalDate today) {
        return fields.read(form, given, fields.as(before), today);
    }

    private static UUID field(Form form, Ranch ranch) {
        var chosen = form.text(FIELD.ask(), FIELD.needed());
        var field = ranch.fields().keySet().stream()
                .filter(id -> id.toString().equals(chosen))
                .findFirst();
        if (field.isEmpty() && !chosen.isEmpty()) {
            form.refuse(FIELD.name(), chosen, "not a field of this ranch", "Choose one from the list.");
        }
        return field.orElse(NONE);
    }

    private static void ask(Form form, Stock.Bales bales, Stock.@Nullable Bales before) {
        // beyond what balers make; a slip of the decimal point lands there
        boolean small = bales.bale() == Stock.BaleKind.SMALL_SQUARE;
        if (bales.baleWeight() != null) {
            form.doubtUnless(
                    StockKind.Box.BALE_WEIGHT.ask(),
                    before == null ? null : before.baleWeight(),
                    bales.baleWeight(),
                    Quantity.of(small ? 25 : 350, Unit.POUND),
                    Quantity.of(small ? 160 : 2500, Unit.POUND));
        }
        int count = bales.count();
        if (before != null && before.count() == count) {
            return;
        }
        if (count > MOST_USUAL) {
            form.doubt(
                    StockKind.Box.COUNT.ask(),
                    "count-unusual",
                    "%s is more than most yards hold.".formatted(Show.count(count, "bale")));
        }
        var rows = bales.rows();
        var columns = bales.columns();
        var tiers = bales.tiers();
        // rounds narrow upwards, so fewer than the full block is usual and more is not
        if (rows != null && columns != null && tiers != null && count > (long) rows * columns * tiers) {
            form.doubt(
                    StockKind.Box.COUNT.ask(),
                    "count-above-stack",
                    "%d rows of %d bales, %d tiers high, make %s: fewer than the %s counted."
                            .formatted(
                                    rows,
                                    columns,
                                    tiers,
                                    Show.count((long) rows * columns * tiers, "bale"),
                                    Show.number(count, 0)));
        }
    }

    /** What is there, as it was counted or measured. */
    static String amount(Ranch ranch, Stock stock) {
        if (stock instanceof PartFed part) {
            return amount(ranch, part.before())
                    + (part.share() > 0
                            ? "; %s left on %s"
                                    .formatted(
                                            part.bales() > 0
                                                    ? Show.count(part.bales(), "bale")
                                                    : Show.percent(100 * part.share()),
                                            Show.day(part.on()))
                            : "; used up by " + Show.day(part.on()));
        }
        if (stock instanceof Stock.Bales b) {
            return "%s %s of %s".formatted(Show.number(b.count(), 0), b.bale().words(), weight(b));
        } else if (stock instanceof Stock.Bunker b) {
            return "bunker, " + sizes(b.length(), b.width(), b.height());
        } else if (stock instanceof Stock.Bag b) {
            return "bag, %s long and %s across".formatted(Show.quantity(b.length()), Show.quantity(b.diameter()));
        } else if (stock instanceof Stock.Weighed w) {
            return "weighed, " + Show.quantity(w.mass());
        } else if (stock instanceof RoundPyramid p) {
            return "%s in a pyramid, %d wide and %d high, of %s"
                    .formatted(
                            Show.count(p.count(), "large round bale"),
                            p.base(),
                            p.tiers(),
                            Show.quantity(p.baleWeight()));
        }
        if (stock instanceof Stock.Standing s) {
            var field = ranch.fields().get(s.field());
            return "standing" + (field == null ? "" : " in " + field.name());
        } else if (stock instanceof LooseStack s) {
            return "loose stack, %s, %s over".formatted(sizes(s.length(), s.width()), Show.quantity(s.over()));
        } else if (stock instanceof Pile p) {
            return "pile, " + sizes(p.length(), p.width(), p.height());
        } else if (stock instanceof UprightSilo s) {
            return "upright silo, %s across, %s deep".formatted(Show.quantity(s.diameter()), Show.quantity(s.depth()));
        } else if (stock instanceof Rick r) {
            return "rick, %s, %s to the eaves and %s above"
                    .formatted(sizes(r.length(), r.width()), Show.quantity(r.eaves()), Show.quantity(r.top()));
        } else if (stock instanceof Sacks s) {
            return "%s of %s".formatted(Show.count(s.bags(), "bag"), Show.quantity(s.bagWeight()));
        }
        var bin = (Bin) stock;
        return "bin, %s across, %s at the wall".formatted(Show.quantity(bin.diameter()), Show.quantity(bin.wall()));
    }

    private static String weight(Stock.Bales bales) {
        var each = bales.baleWeight();
        return each == null ? Show.quantity(UsualBale.weight(bales.bale())) + ", assumed" : Show.quantity(each);
    }

    private static String sizes(Quantity... sizes) {
        return String.join(" by ", Arrays.stream(sizes).map(Show::quantity).toList());
    }
}
