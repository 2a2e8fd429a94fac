package haywright.app.exchange.lab;

import haywright.quantity.Kind;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.Collection;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What stands before the decimals of a sheet. A figure such as 9,8 or 9.8 tells it by itself, whatever the others are;
 * one such as 1,234 is told by the other figures of its sheet, or asked about.
 */
public enum Decimals {
    /** As the sheet itself shows, and asked where it does not. */
    BY_SHEET,
    POINT,
    COMMA;

    private static final String START = "^(?:<\\s*)?[-−+]?";
    private static final Pattern COMMA_TOLD = Pattern.compile(
            START
                    + "(?:[0-9]*,(?:[0-9]{1,2}|[0-9]{4,})|0,[0-9]+|[0-9]{1,3}(?:\\.[0-9]{3})+,[0-9]*|[0-9]{4,},[0-9]+)(?![0-9.,]).*");
    private static final Pattern POINT_TOLD = Pattern.compile(
            START
                    + "(?:[0-9]*\\.(?:[0-9]{1,2}|[0-9]{4,})|0\\.[0-9]+|[0-9]{1,3}(?:,[0-9]{3})+\\.[0-9]*|[0-9]{4,}\\.[0-9]+)(?![0-9.,]).*");
    private static final Pattern COMMAS_TWICE = Pattern.compile(START + "[0-9]{1,3}(?:,[0-9]{3}){2,}(?![0-9.,]).*");
    private static final Pattern POINTS_TWICE = Pattern.compile(START + "[0-9]{1,3}(?:\\.[0-9]{3}){2,}(?![0-9.,]).*");
    private static final Pattern OPEN_COMMA = Pattern.compile(START + "[0-9]{1,3},[0-9]{3}(?![0-9.,]).*");
    private static final Pattern OPEN_POINT = Pattern.compile(START + "[0-9]{1,3}\\.[0-9]{3}(?![0-9.,]).*");

    /**
     * What all figures of a sheet together show.
     *
     * @param figures as printed
     */
    public Sheet of(Collection<String> figures) {
        boolean commas = false;
        boolean points = false;
        boolean longCommas = false;
        for (var figure : figures) {
            var text = figure.strip();
            commas |= COMMA_TOLD.matcher(text).matches()
                    || POINTS_TWICE.matcher(text).matches();
            points |= POINT_TOLD.matcher(text).matches()
                    || COMMAS_TWICE.matcher(text).matches();
            longCommas |= text.matches(START + "0,[0-9]{3}(?![0-9]).*");
        }
        return new Sheet(this, commas, points, longCommas);
    }

    /**
     * @param commas whether a figure has a comma before its decimals beyond doubt
     * @param points whether one has a point
     * @param longCommas whether three decimals stand behind a comma somewhere
     */
    public record Sheet(Decimals said, boolean commas, boolean points, boolean longCommas) {
        /**
         * The figure with a point before its decimals and no sign between thousands.
         *
         * @throws Refused where it could be two figures and nothing on the sheet tells which
         */
        public String pointed(String figure) {
            // 1 085 is written with a space between thousands in French, 1'085 in Switzerland
            var text = figure.strip().replaceAll("(?<=[0-9])[ \\u00a0\\u202f’'](?=[0-9]{3}(?![0-9]))", "");
            if (COMMA_TOLD.matcher(text).matches() || POINTS_TWICE.matcher(text).matches()) {
                return byComma(text);
            }
            if (COMMAS_TWICE.matcher(text).matches() || text.matches(START + "[0-9]{1,3}(?:,[0-9]{3})+\\.[0-9]+")) {
                return text.replace(",", "");
            }
            if (OPEN_COMMA.matcher(text).matches()) {
                return isComma(text) ? byComma(text) : text.replace(",", "");
            }
            if (OPEN_POINT.matcher(text).matches()) {
                boolean isThousand = said == COMMA || said == BY_SHEET && commas && !points;
                return isThousand ? byComma(text) : text;
            }
            return text;
        }

        /**
         * As {@link #pointed(String)}, of a figure in this unit.
         *
         * @throws Refused where it would be a part of a millionth with three decimals, which no laboratory prints
         */
        public String pointed(String figure, @Nullable Unit unit) {
            var text = figure.strip();
            boolean isSmall = unit != null && unit.kind() == Kind.SHARE && unit.toBase(1) <= Unit.PPM.toBase(1);
            if (isSmall
                    && said == BY_SHEET
                    && commas
                    && !points
                    && OPEN_COMMA.matcher(text).matches()
                    && !text.matches(START + "0,.*")) {
                throw asked(text);
            }
            return pointed(figure);
        }

        private static Refused asked(String text) {
            return new Refused(
                    "decimal",
                    text,
                    "this could be %s or %s, and the other figures of the sheet do not tell which"
                            .formatted(text.replace(',', '.'), text.replace(",", "")),
                    "Look at the sheet: what does it print before its decimals? A comma between thousands goes with a point.");
        }

        private boolean isComma(String text) {
            if (said == BY_SHEET && points != commas && (points || longCommas)) {
                return commas;
            }
            if (said != BY_SHEET) {
                return said == COMMA;
            }
            throw asked(text);
        }

        private static String byComma(String text) {
            return text.replace(".", "").replace(',', '.');
        }
    }
}
