package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.Tested;
import haywright.quantity.Unit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was understood of a laboratory's file.
 *
 * @param layout how the file was read, in words
 * @param names every name of a figure met in it, understood or not, in order
 * @param notTaken every line, column and cell that was not understood, in words
 */
public record Understood(String layout, List<Sample> samples, List<Named> names, List<String> notTaken) {
    public Understood {
        samples = List.copyOf(samples);
        names = List.copyOf(names);
        notTaken = List.copyOf(notTaken);
    }

    /** What the file says of one sample; empty text where it says nothing. */
    public record Sample(
            String code,
            String laboratory,
            String sampled,
            String reported,
            Tested.@Nullable Method method,
            List<Cell> cells) {
        public Sample {
            cells = List.copyOf(cells);
        }
    }

    /**
     * One figure as it stands in the file.
     *
     * @param unit null where the file does not tell
     * @param basis null for what has no pair of bases
     * @param text with a point before the decimals; may be no number at all
     * @param read the line or heading it was read from
     */
    public record Cell(
            Analyte analyte, @Nullable Unit unit, @Nullable Basis basis, String text, String read) {}

    /**
     * A name as the file writes it.
     *
     * @param example what stands beside or under it
     * @param taken what it was taken for; null where it was not understood or is left out
     * @param leftOut whether somebody said to leave it out
     */
    public record Named(
            String written, String example, @Nullable Heading taken, boolean leftOut) {}
}
