package haywright.weather;

import haywright.weather.Place.Kind;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Finds a town, a county or a station by its name, as people write it: {@code Valentine, NE}, {@code cherry county
 * nebraska}, {@code St Paul}. Capitals, accents, points and hyphens do not matter.
 */
public final class Places {
    private static final int MOST_OFFERED = 8;
    private static final int LONGEST = 100;
    private static final List<Kind> FIRST = List.of(Kind.TOWN, Kind.COUNTY, Kind.STATION);
    private static final Map<String, String> SHORT = Map.of(
            "st",
            "saint",
            "ste",
            "sainte",
            "ft",
            "fort",
            "mt",
            "mount",
            "mtn",
            "mountain",
            "spgs",
            "springs",
            "jct",
            "junction",
            "cnty",
            "county",
            "co",
            "county");

    private static final String COUNTY_OR_COLORADO = "co";

    private static final Set<String> COUNTRIES = Set.of("usa", "us", "united states", "canada");

    private final List<Named> all;
    private final Map<String, List<Place>> byName;
    private final Map<String, String> states;
    private final Set<String> covered;

    private record Named(Place place, String plain) {}

    /**
     * What a text names.
     *
     * @param places one where it is clear, several where it is not, none where it is unknown; at most eight
     * @param more how many others have the name
     * @param nearest where it is unknown, the full names of places that have the name in another state, then of those
     *     that are spelled most like it
     * @param elsewhere the state, where it is one that the tables do not have
     * @param saysState whether a state was named with it
     */
    public record Found(
            List<Place> places, int more, List<String> nearest, Optional<String> elsewhere, boolean saysState) {
        /** {@code and 5 more: add the state}; empty where every place of the name is among these. */
        public String andMore() {
            return more == 0 ? "" : "and %d more: %s".formatted(more, saysState ? "add the county" : "add the state");
        }
    }

    /** @param state postal letters; empty where none is named */
    private record Asked(String name, Optional<String> county, Optional<String> state) {}

    private Places() {
        var towns = PublishedTable.read(Places.class, "towns.csv.gz").rows().stream()
                .map(Place::town);
        var climate = Climate.known();
        all = Stream.of(
                        towns,
                        climate.counties().stream(),
                        climate.stations().stream().map(ListedStation::place))
                .flatMap(places -> places)
                .map(place -> new Named(place, plain(place.name())))
                .toList();
        byName = all.stream()
                .collect(Collectors.groupingBy(Named::plain, Collectors.mapping(Named::place, Collectors.toList())));
        states = new HashMap<>();
        for (var row : PublishedTable.read(Places.class, "states.csv").rows()) {
            states.put(plain(row.text("name")), row.text("code"));
            states.put(plain(row.text("code")), row.text("code"));
        }
        covered = all.stream().map(named -> named.place.state()).collect(Collectors.toSet());
    }

    private static final class Holder {
        static final Places ALL = new Places();
    }

    /** Read once, when it is first asked for. */
    public static Places known() {
        return Holder.ALL;
    }

    private static String plain(String name) {
        var letters = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("['’.]", "")
                .replaceAll("[^a-z0-9#,]+", " ")
                .strip();
        return Stream.of(letters.split(" "))
                .map(word -> SHORT.getOrDefault(word, word))
                .collect(Collectors.joining(" "));
    }

    List<Place> towns() {
        return all.stream()
                .map(Named::place)
                .filter(place -> place.kind() == Kind.TOWN)
                .toList();
    }

    private Optional<String> state(String plain) {
        var known = states.get(plain);
        if (known != null || plain.length() < 3) {
            return Optional.ofNullable(known);
        }
        // Nebr., Mont., Wyo.: as people shorten them
        var begun = states.entrySet().stream()
                .filter(state -> state.getKey().startsWith(plain))
                .map(Map.Entry::getValue)
                .distinct()
                .toList();
        return begun.size() == 1 ? Optional.of(begun.get(0)) : Optional.empty();
    }

    private Asked asked(String typed) {
        var parts = Stream.of(typed.split(","))
                .map(part -> plain(part).replaceAll(" ?\\b[0-9]{5}( [0-9]{4})?$", ""))
                .filter(part -> !part.isEmpty() && !COUNTRIES.contains(part))
                .collect(Collectors.toCollection(ArrayList::new));
        Optional<String> state = parts.size() < 2 ? Optional.empty() : state(parts.get(parts.size() - 1));
        if (state.isPresent()) {
            parts.remove(parts.size() - 1);
        } else if (parts.size() == 1) {
            state = behind(parts);
        }
        Optional<String> county = parts.size() < 2 ? Optional.empty() : Optional.of(parts.remove(parts.size() - 1));
        return new Asked(String.join(" ", parts).replaceAll(" " + COUNTY_OR_COLORADO + "$", " county"), county, state);
    }

    /** A state without a comma before it: the last one to three words, where words are left before them. */
    private Optional<String> behind(List<String> parts) {
        var words = parts.get(0).split(" ");
        if (byName.containsKey(parts.get(0))) {
            return Optional.empty();
        }
        for (int count = Math.min(3, words.length - 1); count >= 1; count--) {
            var last = String.join(" ", List.of(words).subList(words.length - count, words.length));
            var known = states.get(last);
            var before = String.join(" ", List.of(words).subList(0, words.length - count));
            if (known != null && !(last.equals(COUNTY_OR_COLORADO) && byName.containsKey(before + " county"))) {
                parts.set(0, before);
                return Optional.of(known);
            }
        }
        return Optional.empty();
    }

    /** What a text names. */
    public Found find(String typed) {
        var asked = asked(typed.length() > LONGEST ? typed.substring(0, LONGEST) : typed);
        if (asked.state.isPresent() && !covered.contains(asked.state.get())) {
            return new Found(List.of(), 0, List.of(), asked.state, true);
        }
        var exact = fitting(byName.getOrDefault(asked.name, List.of()).stream(), asked);
        var places = exact.isEmpty() ? withoutCounty(asked) : exact;
        if (places.isEmpty()) {
            places = begun(asked);
        }
        if (!places.isEmpty()) {
            return new Found(
                    places.stream().limit(MOST_OFFERED).toList(),
                    Math.max(0, places.size() - MOST_OFFERED),
                    List.of(),
                    Optional.empty(),
                    asked.state.isPresent());
        }
        var nearest = Stream.concat(inOtherStates(asked), nearest(asked).stream())
                .distinct()
                .limit(MOST_OFFERED)
                .toList();
        return new Found(
                List.of(),
                0,
                nearest.isEmpty() ? asked.state.map(this::stationsOf).orElse(List.of()) : nearest,
                Optional.empty(),
                asked.state.isPresent());
    }

    /** Of several kinds in one state, the first alone: a town where there is one. */
    private List<Place> fitting(Stream<Place> places, Asked asked) {
        var fitting = places.filter(
                        place -> asked.state.isEmpty() || asked.state.get().equals(place.state()))
                .filter(place -> asked.county.isEmpty() || lies(place, asked.county.get()))
                .toList();
        for (var kind : FIRST) {
            var of = fitting.stream().filter(place -> place.kind() == kind).toList();
            if (!of.isEmpty()) {
                return of;
            }
        }
        return List.of();
    }

    private boolean lies(Place place, String county) {
        return all.stream()
                .filter(named -> named.place.kind() == Kind.COUNTY
                        && named.place.county().equals(place.county()))
                .anyMatch(named -> named.plain.equals(county)
                        || named.plain.equals(county + " county")
                        || named.plain.equals(county + " borough"));
    }

    /** {@code Cherry, NE}: no town, and so the county. */
    private List<Place> withoutCounty(Asked asked) {
        return fitting(
                Stream.of(" county", " borough")
                        .flatMap(kind -> byName.getOrDefault(asked.name + kind, List.of()).stream()),
                asked);
    }

    /** {@code Butte} for Butte-Silver Bow, {@code Calgary} for the station at its airport. */
    private List<Place> begun(Asked asked) {
        return asked.name.isEmpty()
                ? List.of()
                : fitting(
                        all.stream()
                                .filter(named -> named.plain.startsWith(asked.name + " "))
                                .map(Named::place),
                        asked);
    }

    /** {@code Bowman, ND} for Bowman, WY. */
    private Stream<String> inOtherStates(Asked asked) {
        return Stream.of("", " county")
                .flatMap(kind -> byName.getOrDefault(asked.name + kind, List.of()).stream())
                .filter(place -> place.kind() != Kind.STATION)
                .map(this::full);
    }

    private List<String> nearest(Asked asked) {
        int most = Math.max(2, asked.name.length() / 3);
        var changes = new LinkedHashMap<Place, Integer>();
        for (var named : all) {
            if (named.place.kind() != Kind.STATION
                    && (asked.state.isEmpty() || asked.state.get().equals(named.place.state()))
                    && Math.abs(named.plain.length() - asked.name.length()) <= most) {
                int needed = changes(asked.name, named.plain);
                if (needed <= most) {
                    changes.put(named.place, needed);
                }
            }
        }
        return changes.entrySet().stream()
                .sorted(Comparator.comparingInt(Map.Entry::getValue))
                .map(entry -> full(entry.getKey()))
                .distinct()
                .limit(MOST_OFFERED)
                .toList();
    }

    /** Of provinces no towns are listed: their stations can be named instead. */
    private List<String> stationsOf(String province) {
        return towns().stream().anyMatch(town -> town.state().equals(province))
                ? List.of()
                : Climate.known().stations().stream()
                        .map(station -> station.place())
                        .filter(place -> place.state().equals(province))
                        .map(this::full)
                        .toList();
    }

    /** Single letters put in, left out, exchanged, or swapped with the next. */
    private static int changes(String a, String b) {
        var rows = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    rows[i][j] = i + j;
                    continue;
                }
                boolean same = a.charAt(i - 1) == b.charAt(j - 1);
                rows[i][j] =
                        Math.min(rows[i - 1][j - 1] + (same ? 0 : 1), Math.min(rows[i - 1][j], rows[i][j - 1]) + 1);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    rows[i][j] = Math.min(rows[i][j], rows[i - 2][j - 2] + 1);
                }
            }
        }
        return rows[a.length()][b.length()];
    }

    /** A name that finds this place alone: with its county where its state has another of the name. */
    public String full(Place place) {
        var alike = fitting(
                byName.getOrDefault(plain(place.name()), List.of()).stream(),
                new Asked("", Optional.empty(), Optional.of(place.state())));
        boolean alone = alike.size() < 2;
        return alone || place.county().isEmpty()
                ? place.words()
                : county(place)
                        .map(county -> "%s, %s, %s".formatted(place.name(), county, place.state()))
                        .orElse(place.words());
    }

    private Optional<String> county(Place place) {
        return all.stream()
                .map(Named::place)
                .filter(other -> other.kind() == Kind.COUNTY && other.county().equals(place.county()))
                .map(Place::name)
                .findFirst();
    }

    /**
     * The one place that a text names.
     *
     * @param field that it was entered
     * @throws Refused with those of the name, or with the nearest spellings
     */
    public Place one(String field, String typed) {
        var found = find(typed);
        if (found.places.size() == 1) {
            return found.places.get(0);
        }
        if (typed.isBlank()) {
            throw new Refused(field, "", "a place is a town or a county", "Enter it with its state: Valentine, NE.");
        }
        if (found.elsewhere.isPresent()) {
            throw new Refused(
                    field,
                    typed,
                    "the tables have the northern states and Canada, not " + found.elsewhere.get(),
                    "Import the file of the nearest weather station.");
        }
        if (found.places.isEmpty()) {
            throw new Refused(
                    field,
                    typed,
                    "no town or county of this name is known",
                    found.nearest.isEmpty()
                            ? "Enter a nearby town or the county, with its state."
                            : "Did you mean %s? If not, enter a nearby town or the county, with its state."
                                    .formatted(String.join("; ", found.nearest)));
        }
        throw new Refused(
                field,
                typed,
                "more than one place has that name",
                "Choose one: %s%s"
                        .formatted(String.join("; ", choices(found)), found.more == 0 ? "" : "; " + found.andMore()));
    }

    /** Names to choose from, each of which finds one place. */
    public List<String> choices(Found found) {
        var names = new LinkedHashSet<String>();
        found.places.forEach(place -> names.add(full(place)));
        names.addAll(found.nearest);
        return List.copyOf(names);
    }
}
