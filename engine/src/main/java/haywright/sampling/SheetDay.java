package haywright.sampling;

import java.time.LocalDate;

/** A day as six digits on a line that goes back from a phone: {@code 261125}. */
public final class SheetDay {
    private static final int CENTURY = 2000;

    private SheetDay() {}

    public static String write(LocalDate day) {
        return "%02d%02d%02d".formatted(day.getYear() % 100, day.getMonthValue(), day.getDayOfMonth());
    }

    /**
     * @throws NumberFormatException where it is no number
     * @throws java.time.DateTimeException where there is no such day
     */
    public static LocalDate read(String digits) {
        int day = Integer.parseInt(digits);
        return LocalDate.of(CENTURY + day / 10_000, day / 100 % 100, day % 100);
    }
}
