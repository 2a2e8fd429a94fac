package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.Arrays;
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
 * @param share what it is a share of, where the house keeps it as a share of something else; null as a rule
 */
public record Heading(
        Analyte analyte,
        @Nullable Unit unit,
        @Nullable Basis basis,
        @Nullable Share share) {
    private static final int LONGEST_UNIT = 40;
    private static final String PART = "(?:^|[\\s,;:_/(\\[-]+)";
    private static final String RECEIVED =
            "(?:on |in |of )?(?:an? )?(?:as[ _/-]*(?:received|rec(?:[’']?d|v[’']?d|v?\\.)?|rcvd|fed|is|sampled|submitted|delivered|shipped|collected|(?:it )?(?:arrived|came)(?: in)?|wet)|wet[ _/-]*(?:basis|weight|wt\\.?|matter)"
                    + "|fresh(?: matter| weight| wt\\.?| mass)?|ar|af|f\\.?m\\.?|f\\.?w\\.?|a\\.r\\.?|a\\.f\\.?)(?: basis)?";
    private static final String DRY = "(?:on |in |of )?(?:a )?(?:100 ?% ?)?"
            + "(?:(?:oven[ -])?dr(?:y|ied)[ _/-]*(?:matter|weight|wt\\.?|mass|material|substance)|(?:oven[ -])?dry|d\\.m\\.?|d\\.?w\\.?|dm|dmb|db|(?:moisture|water)[ -]free|free of (?:moisture|water))(?: basis)?";
    private static final String NINETY = "(?:on |in |at )?(?:a )?90 ?%(?: (?:dm|dry matter|dry))?(?: basis)?";

    private static final Map<Analyte, Analyte> WHOLES = Map.of(
            Analyte.SP, Analyte.CP,
            Analyte.RDP, Analyte.CP,
            Analyte.RUP, Analyte.CP,
            Analyte.NH3N, Analyte.CP,
            Analyte.NDFD, Analyte.NDF);
    private static final Set<Analyte> OF_NITROGEN = EnumSet.of(Analyte.NH3N);

    /** @param of what the figure is a share of; null for dry matter, where the house keeps a share of protein or fiber */
    public record Share(@Nullable Analyte of) {
        static final Share OF_FEED = new Share(null);

        static Share of(Analyte whole) {
            return new Share(whole);
        }
    }

    public Heading(Analyte analyte, @Nullable Unit unit, @Nullable Basis basis) {
        this(analyte, unit, basis, null);
    }

    public static Optional<Heading> of(String text) {
        return Label.of(text).map(Label::heading);
    }

    /** A basis of columns or cells counts where the name tells none, and never beside a share of something else. */
    public Heading with(@Nullable Unit told, @Nullable Basis on) {
        return new Heading(analyte, unit == null ? told : unit, basis == null ? on : basis, share);
    }

    private static Pattern pattern(Basis basis) {
        return Pattern.compile(PART + words(basis) + "[)\\]]*$");
    }

    private static String words(Basis basis) {
        return switch (basis) {
            case AS_RECEIVED -> RECEIVED;
            case DRY_MATTER -> DRY;
            case NINETY_PCT -> NINETY;
        };
    }

    private static final Map<Basis, Pattern> WHOLE = Map.of(
            Basis.AS_RECEIVED, pattern(Basis.AS_RECEIVED),
            Basis.DRY_MATTER, pattern(Basis.DRY_MATTER),
            Basis.NINETY_PCT, pattern(Basis.NINETY_PCT));
    private static final Map<Basis, Pattern> ANYWHERE = Map.of(
            Basis.AS_RECEIVED, part(Basis.AS_RECEIVED),
            Basis.DRY_MATTER, part(Basis.DRY_MATTER),
            Basis.NINETY_PCT, part(Basis.NINETY_PCT));

    private static Pattern part(Basis basis) {
        return Pattern.compile("(?<=[\\s,;:_/(\\[-])" + words(basis) + "(?=$|[\\s,;:/)\\]])");
    }

    static Pattern anywhere(Basis basis) {
        return java.util.Objects.requireNonNull(ANYWHERE.get(basis));
    }

    /** The basis that a heading or a cell of its own names, and nothing else. */
    public static Optional<Basis> basis(String text) {
        var key = key(text).replaceFirst("^%\\s*", "");
        for (var one : List.of(Basis.NINETY_PCT, Basis.AS_RECEIVED, Basis.DRY_MATTER)) {
            if (!key.isEmpty()
                    && java.util.Objects.requireNonNull(WHOLE.get(one))
                            .matcher(key)
                            .replaceFirst("")
                            .isBlank()) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** A sample with the basis behind its name, over a column: "North bench DM", "A-101 (as fed)". */
    public record Side(String sample, Basis basis) {}

    /** Empty where a heading says no more than a basis, or none. */
    public static Optional<Side> side(String heading) {
        var words = heading.strip().split("\\s+");
        for (int from = Math.max(1, words.length - 4); from < words.length; from++) {
            var sample = String.join(" ", Arrays.asList(words).subList(0, from)).replaceAll("[\\s,:(\\[–-]+$", "");
            var basis = basis(String.join(" ", Arrays.asList(words).subList(from, words.length))
                    .replaceAll("^[(\\[]|[)\\]]$", ""));
            boolean isName = sample.matches(".*[\\p{L}\\p{N}].*")
                    && !HalfDry.isIn(heading)
                    && Label.of(sample).isEmpty()
                    && unit(sample).isEmpty()
                    && !ColumnWords.isValue(sample)
                    && !ColumnWords.isOther(sample);
            if (basis.isPresent() && isName) {
                return Optional.of(new Side(sample, basis.get()));
            }
        }
        return Optional.empty();
    }

    /** A column headed so is as received where another beside it is on dry matter; alone it may name a method. */
    public static boolean isWet(String text) {
        return key(text).replaceFirst("^%\\s*", "").matches("wet:?");
    }

    /** A unit of a share, an energy or a charge, which is what laboratories print. */
    public static Optional<Unit> unit(String text) {
        if (text.length() > LONGEST_UNIT) {
            return Optional.empty();
        }
        var plain = UnitWords.plain(text.strip().toLowerCase(Locale.ROOT)).replaceAll("\\s+per\\s+", "/");
        if (plain.equals("meq/100g")) {
            return Optional.of(Unit.MEQ_PER_100G);
        }
        if (plain.matches("[uµ]g/kg|mcg/kg|ng/g")) {
            return Optional.of(Unit.PPB);
        }
        if (plain.matches("[uµ]g/g|mcg/g|mg / kg")) {
            return Optional.of(Unit.PPM);
        }
        for (var kind : List.of(Kind.SHARE, Kind.ENERGY_DENSITY, Kind.CHARGE_DENSITY)) {
            var known = Unit.parse(plain, kind).filter(unit -> !unit.symbol().isEmpty());
            if (known.isPresent()) {
                return known;
            }
        }
        return Optional.empty();
    }

    /** What the house keeps it a share of: soluble protein of crude protein, and the like; null for the feed. */
    public static @Nullable Analyte wholeOf(Analyte analyte) {
        return WHOLES.get(analyte);
    }

    static boolean isShareOf(Analyte analyte, Analyte whole) {
        return WHOLES.get(analyte) == whole;
    }

    /** In a laboratory's words: {@code % of CP} where the house keeps it so, and the unit itself elsewhere. */
    public static String unitWords(Analyte analyte, Unit unit) {
        var whole = WHOLES.get(analyte);
        return whole == null || unit != Unit.PERCENT
                ? unit.symbol()
                : "% of " + (OF_NITROGEN.contains(analyte) ? "N" : whole.name());
    }

    /**
     * What a cell of units says of this analyte: {@code g/kg}, {@code % DM}, {@code MJ/kg as fed}, {@code % of CP}.
     * Empty where it is no unit of it.
     */
    public static Optional<Heading> measured(Analyte analyte, String written) {
        return Label.of(analyte.id() + ", " + written)
                .map(Label::heading)
                .filter(heading -> heading.analyte() == analyte);
    }

    /** What is written, and where it says one thing in two languages each of them: "Unité / Unit". */
    public static List<String> sides(String text) {
        var sides = text.split("\\s*/\\s*");
        return sides.length < 2
                ? List.of(text)
                : java.util.stream.Stream.concat(java.util.stream.Stream.of(text), java.util.Arrays.stream(sides))
                        .toList();
    }

    public static String key(String text) {
        return text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", " ");
    }
}
