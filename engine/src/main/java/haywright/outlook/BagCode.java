package haywright.outlook;

import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.CheckLetter;
import haywright.workings.Refused;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What the sample code of a report says of the sheet that its sample was taken by.
 *
 * @param sheet null where none of this ranch has the code
 * @param composite "A" or "B" of a sheet with two; else empty
 * @param printed the code as the bag has it, where what was typed does not fit its check letter; else empty
 */
public record BagCode(@Nullable Sampling sheet, String composite, String printed) {
    private static final Pattern BAG = Pattern.compile("(S[0-9A-Z]{5})-([0-9]{1,3}|[AB])[0-9][A-Z]");

    /** Empty for a laboratory's own number, which says nothing of a sheet. */
    public static Optional<BagCode> read(Ranch ranch, String typed) {
        var code = typed.strip().toUpperCase(Locale.ROOT);
        for (var sheet : ranch.samplings().values()) {
            if (code.equals(sheet.code())) {
                return Optional.of(new BagCode(sheet, "", ""));
            }
        }
        var bag = BAG.matcher(code);
        if (bag.matches() && isWhole(code)) {
            var which = bag.group(2);
            return Optional.of(new BagCode(
                    ranch.samplings().values().stream()
                            .filter(s -> s.code().equals(bag.group(1)))
                            .findFirst()
                            .orElse(null),
                    which.equals("A") || which.equals("B") ? which : "",
                    ""));
        }
        return miscopied(ranch, code);
    }

    /** The bag of this ranch that one wrong sign, one left out, one too many or one swap makes of it. */
    private static Optional<BagCode> miscopied(Ranch ranch, String code) {
        for (var sheet : ranch.samplings().values()) {
            for (var bag : sheet.bags()) {
                if (isNear(code, bag)) {
                    return Optional.of(new BagCode(sheet, "", bag));
                }
            }
            if (code.startsWith(sheet.code() + "-")) {
                return Optional.of(new BagCode(sheet, "", sheet.bags().get(0)));
            }
        }
        return Optional.empty();
    }

    private static boolean isWhole(String code) {
        try {
            CheckLetter.read(code);
            return true;
        } catch (Refused e) {
            return false;
        }
    }

    private static boolean isNear(String typed, String bag) {
        int same = 0;
        while (same < Math.min(typed.length(), bag.length()) && typed.charAt(same) == bag.charAt(same)) {
            same++;
        }
        var left = typed.substring(same);
        var right = bag.substring(same);
        return switch (left.length() - right.length()) {
            case 0 ->
                left.length() > 0
                        && (left.substring(1).equals(right.substring(1))
                                || (left.length() > 1
                                        && left.charAt(0) == right.charAt(1)
                                        && left.charAt(1) == right.charAt(0)
                                        && left.substring(2).equals(right.substring(2))));
            case 1 -> left.substring(1).equals(right);
            case -1 -> left.equals(right.substring(1));
            default -> false;
        };
    }

    public boolean isMiscopied() {
        return !printed.isEmpty();
    }

    /** The sheet that a report on a lot may be judged by: of this very lot, its code copied right. */
    Optional<Sampling> sheetOf(Lot lot) {
        return Optional.ofNullable(isMiscopied() ? null : sheet)
                .filter(s -> lot.id().equals(s.lot()));
    }
}
