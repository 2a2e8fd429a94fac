package haywright.app.cli;

import haywright.app.words.ShortRationWords;
import haywright.app.words.ShortWords;
import haywright.app.words.Show;
import haywright.feeding.Rations;
import haywright.feeding.hay.ShortOfHay;
import java.io.PrintWriter;

/** What to do where hay is short, in its order, as a terminal shows it. */
final class DemoLadder {
    private DemoLadder() {}

    static void print(Rations rations, PrintWriter out) {
        out.printf("%nShort of hay%n");
        ShortOfHay.lacks(rations.yard()).forEach(lack -> out.printf("  %s%n", ShortWords.lack(lack)));
        ShortOfHay.of(rations, ShortOfHay.Asked.NOTHING).ifPresent(hay -> print(hay, out));
    }

    private static void print(ShortOfHay hay, PrintWriter out) {
        out.printf("  %s%n", ShortWords.headline(hay));
        ShortWords.basis(hay).forEach(sentence -> out.printf("  %s%n", sentence));
        if (hay.isShort()) {
            out.printf("%n  In this order:%n");
            int number = 1;
            for (var step : hay.steps()) {
                out.printf("  %d. %s, %s%n", number++, ShortWords.order(step, hay), ShortWords.by(step, hay));
                out.printf("     %s%n", ShortWords.figures(step, hay));
            }
            out.println();
            ShortWords.after(hay).forEach(sentence -> out.printf("  %s%n", sentence));
            out.printf("%n  What each group gets then, per head per day, as fed, waste included:%n");
            if (!ShortRationWords.loss(hay).isEmpty()) {
                out.printf("  %s%n", ShortRationWords.loss(hay));
            }
            for (var least : hay.leastHarm()) {
                out.printf("  %s, %s head%n", least.group().name(), Show.number(least.head(), 0));
                for (var row : least.rows()) {
                    out.printf(
                            "     %s, %s head: %s%n",
                            ShortRationWords.when(least.group(), row),
                            Show.number(row.head(), 0),
                            ShortRationWords.fed(row));
                    ShortRationWords.beside(row, hay.ranch()).forEach(says -> out.printf("       %s%n", says));
                }
                if (!least.unmet().isEmpty()) {
                    out.printf("     %s%n", ShortRationWords.unmet(least));
                }
            }
            out.printf("%n  All rows together:%n");
            ShortRationWords.used(hay).forEach(says -> out.printf("     %s%n", says));
        }
        out.println();
        ShortWords.cautions().forEach(caution -> out.printf("  %s%n", caution));
    }
}
