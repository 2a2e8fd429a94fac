package haywright.app.report.picture;

import haywright.app.words.Measures;
import haywright.app.words.Show;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * All lots at a glance: a bar for the tons of each, with a stroke as long as they are doubtful, and beside it a bar for the
 * protein. Black is tested, white is not, hatched must not be fed yet, as the squares in the list below say it.
 *
 * @param lots at least one
 */
public record LotsPicture(List<One> lots) {
    private static final double TONS = 150;
    private static final double PROTEIN_AT = 222;
    private static final double PROTEIN = 66;
    private static final double BAR = 12;
    private static final double STEP = 36;
    private static final double HEAD = 18;

    public LotsPicture {
        lots = List.copyOf(lots);
    }

    /** How a bar is filled: by what is known of the lot. */
    public enum Fill {
        TESTED(Svg.INK),
        UNTESTED("#fff"),
        DANGER("url(#lots-due)");

        private final String paint;

        Fill(String paint) {
            this.paint = paint;
        }
    }

    /**
     * @param tons as fed, in kg; with {@code low} and {@code high} 0 where nobody knows
     * @param protein percent of dry matter, tested or of the feed book
     * @param state in words, for who does not see the picture: "tested for protein"
     */
    public record One(
            String name,
            Fill fill,
            String state,
            OptionalDouble tons,
            double low,
            double high,
            OptionalDouble protein) {
        private String words() {
            return "%s: %s, %s, %s"
                    .formatted(
                            name,
                            tons.isPresent() ? Show.tons(tons.getAsDouble()) : Measures.tons() + " not known",
                            protein.isPresent() ? percent() + " protein" : "protein not known",
                            state);
        }

        private String percent() {
            return Show.percent(protein.getAsDouble());
        }
    }

    public String svg() {
        double most = lots.stream().mapToDouble(One::high).max().orElse(1);
        double richest =
                lots.stream().mapToDouble(one -> one.protein().orElse(0)).max().orElse(1);
        var drawn = new ArrayList<String>();
        drawn.add(Svg.text(0, 12, "start", false, "As fed"));
        drawn.add(Svg.text(PROTEIN_AT, 12, "start", false, "Protein, dry matter"));
        double y = HEAD;
        for (var one : lots) {
            drawn.add(Svg.text(0, y + 13, "start", true, one.name));
            bars(one, y + 18, TONS / Math.max(most, 1), PROTEIN / Math.max(richest, 1), drawn);
            y += STEP;
        }
        return Svg.picture(
                "lots",
                340,
                (int) Math.ceil(y + 4),
                Measures.say("{Tons} and protein of each lot"),
                String.join("; ", lots.stream().map(One::words).toList()) + ".",
                drawn);
    }

    private static void bars(One one, double y, double aKilogram, double aPercent, List<String> drawn) {
        double middle = y + BAR / 2;
        if (one.tons.isPresent()) {
            drawn.add(Svg.box(0, y, Math.max(1, one.tons.getAsDouble() * aKilogram), BAR, one.fill.paint));
            drawn.add(Svg.line(one.low * aKilogram, middle, one.high * aKilogram, middle));
            drawn.add(Svg.line(one.high * aKilogram, y + 2, one.high * aKilogram, y + BAR - 2));
        }
        drawn.add(Svg.text(
                one.high * aKilogram + 6,
                y + BAR - 1,
                "start",
                false,
                one.tons.isPresent() ? Show.tons(one.tons.getAsDouble()) : "not known"));
        if (one.protein.isPresent()) {
            double length = one.protein.getAsDouble() * aPercent;
            drawn.add(Svg.box(PROTEIN_AT, y, Math.max(1, length), BAR, one.fill.paint));
            drawn.add(Svg.text(PROTEIN_AT + length + 5, y + BAR - 1, "start", false, one.percent()));
        }
    }
}
