package haywright.bench;

import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.ReportText;

/** Lines of a report pasted as text: processor time of 10,000 lines that say nothing, as a ratio to 1,000 of them. */
final class Lines {
    private Lines() {}

    public static void main(String[] args) {
        double few = time(1_000);
        double many = time(10_000);
        System.out.printf("10,000 lines beside 1,000: %.1f%n", many / few);
    }

    private static double time(int lines) {
        var text = text(lines);
        read(text); // warm
        read(text);
        double from = Cpu.seconds();
        int times = 5;
        for (int i = 0; i < times; i++) {
            read(text);
        }
        double took = (Cpu.seconds() - from) / times;
        System.out.printf("%d lines: %.3f s of processor%n", lines, took);
        return took;
    }

    private static void read(String text) {
        var samples =
                ReportText.read(text, Decimals.BY_SHEET, null, Vocabulary.HOUSE).samples();
        if (samples.isEmpty()) {
            throw new IllegalStateException("the figure among the lines was not found");
        }
    }

    /** Besides lines, one that is long and one of a sign that opens and never closes. */
    private static String text(int lines) {
        var text = new StringBuilder("Analysis  As received  Dry matter\n");
        for (int i = 0; i < lines; i++) {
            text.append("Stuff ").append(i).append(" of a kind     1.0        2.0\n");
        }
        return text.append("Crude protein     9.0       10.2\n")
                .append("x".repeat(10 * lines))
                .append(" 12\n")
                .append("( ".repeat(2 * lines))
                .append('\n')
                .toString();
    }
}
