package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A column's heading, or the name in a row: which analyte, and which unit and basis it tells. {@code CP % DM},
 * {@code NEm (Mcal/lb), as received}, {@code adf_dm}, {@code Calcium}.
 *
 * @param unit null where it tells none
 * @param basis null where it tells none
 */
public record Heading(
        Analyte analyte, @Nullable Unit unit, @Nullable Basis basis) {
    private static final String PART = "(?:^|[\\s,;:_/(\\[-]+)";
    private static final Pattern RECEIVED = Pattern.compile(PART
            + "(?:on |in |of )?(?:as[ _-]?(?:received|rec[’']?d|fed|is|sampled|submitted)|wet|fresh(?: matter| weight)?|ar|af)"
            + "(?: basis)?[)\\]]*$");
    private static final Pattern DRY = Pattern.compile(PART
            + "(?:on |in |of )?(?:100 ?% ?)?(?:dry[ _-]?(?:matter|weight|wt\\.?)|dry|dm|dmb|db|moisture[ -]free)"
            + "(?: basis)?[)\\]]*$");
    private static final Pattern NINETY = Pattern.compile(PART + "(?:at )?90 ?%(?: (?:dm|dry matter))?[)\\]]*$");
    private static final Pattern LAST = Pattern.compile("^(.*?)[\\s,;:_(\\[]*([^\\s,;:_(\\[]+?)[)\\]]*$");
    private static final Pattern PERCENT_FIRST = Pattern.compile("^(?:%|pct|percent)\\s*(?:of )?");

    private static final Map<String, Set<Analyte>> SHARES = Map.of(
            "cp", EnumSet.of(Analyte.SP, Analyte.RDP, Analyte.RUP),
            "ndf", EnumSet.of(Analyte.NDFD),
            "n", EnumSet.of(Analyte.NH3N));

    public static Optional<Heading> of(String text) {
        return of(key(text), null, null);
    }

    private static Optional<Heading> of(String text, @Nullable Unit unit, @Nullable Basis basis) {
        var known = Analyte.find(text).or(() -> Analyte.find(text.replaceFirst("\\.$", "")));
        if (known.isPresent()) {
            boolean fits = unit == null || unit.kind() == known.get().unit().kind();
            return fits ? Optional.of(new Heading(known.get(), unit, basis)) : Optional.empty();
        }
        if (basis == null) {
            for (var one : List.of(Basis.NINETY_PCT, Basis.AS_RECEIVED, Basis.DRY_MATTER)) {
                var rest = pattern(one).matcher(text).replaceFirst("");
                if (!rest.equals(text) && !rest.isBlank()) {
                    var found = of(rest.strip(), unit, one);
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
        }
        if (unit == null) {
            var last = LAST.matcher(text);
            if (last.matches() && !last.group(1).isBlank()) {
                var told = unit(last.group(2));
                if (told.isPresent()) {
                    return of(last.group(1).strip(), told.get(), basis);
                }
            }
            var rest = PERCENT_FIRST.matcher(text).replaceFirst("");
            if (!rest.equals(text) && !rest.isBlank()) {
                return of(rest, Unit.PERCENT, basis);
            }
        }
        return Optional.empty();
    }

    private static Pattern pattern(Basis basis) {
        return switch (basis) {
            case AS_RECEIVED -> RECEIVED;
            case DRY_MATTER -> DRY;
            case NINETY_PCT -> NINETY;
        };
    }

    /** The basis that a heading or a cell of its own names, and nothing else. */
    public static Optional<Basis> basis(String text) {
        var key = key(text).replaceFirst("^%\\s*", "");
        for (var one : List.of(Basis.NINETY_PCT, Basis.AS_RECEIVED, Basis.DRY_MATTER)) {
            if (!key.isEmpty() && pattern(one).matcher(key).replaceFirst("").isBlank()) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** A unit of a share, an energy or a charge, which is what laboratories print. */
    public static Optional<Unit> unit(String text) {
        for (var kind : List.of(Kind.SHARE, Kind.ENERGY_DENSITY, Kind.CHARGE_DENSITY)) {
            var known = Unit.parse(text, kind).filter(unit -> !unit.symbol().isEmpty());
            if (known.isPresent()) {
                return known;
            }
        }
        return Optional.empty();
    }

    /** Whether the house keeps it as a share of this: soluble protein of crude protein, and the like. */
    public static boolean isShareOf(Analyte analyte, String whole) {
        var key =
                whole.contains("protein") ? "cp" : whole.contains("ndf") ? "ndf" : whole.startsWith("n") ? "n" : whole;
        return SHARES.getOrDefault(key.toLowerCase(Locale.ROOT), Set.of()).contains(analyte);
    }

    /**
     * What a cell of units says of this analyte: {@code g/kg}, {@code % DM}, {@code MJ/kg as fed}, {@code % of CP}.
     * Empty where it is no unit of it.
     */
    public static Optional<Heading> measured(Analyte analyte, String written) {
        var key = key(written).replaceFirst("^%(?=\\S)", "% ");
        for (int end = key.length(); end > 0; end = key.lastIndexOf(' ', end - 1)) {
            var unit = unit(key.substring(0, end))
                    .filter(u -> u.kind() == analyte.unit().kind());
            var rest = key.substring(end).strip();
            var basis = basis(rest);
            if (unit.isPresent()
                    && (rest.isEmpty()
                            || basis.isPresent()
                            || isShareOf(analyte, rest.replaceFirst("^of (?:total )?", "")))) {
                return Optional.of(new Heading(analyte, unit.get(), basis.orElse(null)));
            }
        }
        return Optional.empty();
    }

    public static String key(String text) {
        return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", " ");
    }
}
