package haywright.app.store;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Predicate;
import org.jdbi.v3.core.Jdbi;

/** What was typed into a form and not saved yet, exactly as typed, right or wrong. */
public final class Drafts {
    /** Stands for the round, where a form belongs to no ranch yet. */
    public static final UUID THE_ROUND = new UUID(0, 0);

    /** Before the name of each of several that were left unfinished of one form; the last one has none. */
    public static final String BESIDE = "?left=";

    private static final String ASIDE = "set-aside/";

    /** A box may be empty, and never has a null in it. */
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .defaultSetterInfo(JsonSetter.Value.construct(Nulls.FAIL, Nulls.FAIL))
            .build();

    private final Jdbi jdbi;

    Drafts(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /**
     * In the place of whatever waits there.
     *
     * @param form names the form and what it is about: {@code lot/UUID}, {@code report/new}
     */
    public void put(UUID ranch, String form, Map<String, List<String>> fields) {
        put(ranch, form, fields, there -> true, there -> false);
    }

    /**
     * In the place of what the same window left. What another window left there makes room under a name of its own, and
     * what the same window left under such a name is gone.
     */
    public void put(
            UUID ranch, String form, Map<String, List<String>> fields, Predicate<Map<String, List<String>>> isOwn) {
        put(ranch, form, fields, there -> there.equals(fields) || isOwn.test(there), isOwn);
    }

    private void put(
            UUID ranch,
            String form,
            Map<String, List<String>> fields,
            Predicate<Map<String, List<String>>> givesWay,
            Predicate<Map<String, List<String>>> isOwn) {
        var json = json(fields);
        while (!isPut(ranch, form, json, givesWay)) {
            // another window was quicker: what it left is looked at in turn
        }
        for (var name : waiting(ranch)) {
            if (!name.equals(form) && (name.equals(alone(form)) || name.startsWith(alone(form) + BESIDE))) {
                kept(ranch, name)
                        .filter(there -> read(there).filter(isOwn).isPresent())
                        .ifPresent(there -> drop(ranch, name, there));
            }
        }
    }

    /** Each step changes only what it has seen, so that no window takes what another puts there meanwhile. */
    private boolean isPut(UUID ranch, String form, String json, Predicate<Map<String, List<String>>> givesWay) {
        setAsideUnreadable(ranch, form);
        var there = kept(ranch, form);
        if (there.isEmpty()) {
            return jdbi.withHandle(h -> h.execute(
                            "INSERT INTO draft (ranch_id, form, fields) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
                            ranch.toString(),
                            form,
                            json))
                    == 1;
        }
        if (read(there.get()).filter(givesWay).isPresent()) {
            return jdbi.withHandle(h -> h.execute(
                            "UPDATE draft SET fields = ? WHERE ranch_id = ? AND form = ? AND fields = ?",
                            json,
                            ranch.toString(),
                            form,
                            there.get()))
                    == 1;
        }
        jdbi.useHandle(h -> h.execute(
                "UPDATE draft SET form = ? WHERE ranch_id = ? AND form = ? AND fields = ?",
                alone(form) + BESIDE + UUID.randomUUID().toString().substring(0, 8),
                ranch.toString(),
                form,
                there.get()));
        return false;
    }

    private void drop(UUID ranch, String form, String json) {
        jdbi.useHandle(h -> h.execute(
                "DELETE FROM draft WHERE ranch_id = ? AND form = ? AND fields = ?", ranch.toString(), form, json));
    }

    /** The form without which of several that were left unfinished it is. */
    private static String alone(String form) {
        int at = form.indexOf(BESIDE);
        return at < 0 ? form : form.substring(0, at);
    }

    private static String json(Map<String, List<String>> fields) {
        try {
            return MAPPER.writeValueAsString(fields);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What tells one draft of a form from another; empty for none. */
    public static String print(Map<String, List<String>> fields) {
        return fields.isEmpty()
                ? ""
                : "%08x".formatted(new TreeMap<>(fields).toString().hashCode());
    }

    /** What was typed; empty when nothing is waiting, or what is {@linkplain #isUnreadable cannot be read}. */
    public Map<String, List<String>> get(UUID ranch, String form) {
        return kept(ranch, form).flatMap(Drafts::read).orElse(Map.of());
    }

    /** Whether something is waiting that another program or a failing disk has damaged. */
    public boolean isUnreadable(UUID ranch, String form) {
        return kept(ranch, form).filter(json -> read(json).isEmpty()).isPresent();
    }

    private Optional<String> kept(UUID ranch, String form) {
        return jdbi.withHandle(h -> h.createQuery("SELECT coalesce(" + OneRow.text("fields")
                        + ", '') FROM draft WHERE ranch_id = :ranch AND form = :form")
                .bind("ranch", ranch.toString())
                .bind("form", form)
                .mapTo(String.class)
                .findOne());
    }

    private static Optional<Map<String, List<String>>> read(String json) {
        try {
            return Optional.ofNullable(MAPPER.readValue(json, new TypeReference<>() {}));
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /**
     * A draft that could not be read when its form was filled in again.
     *
     * @param form that it was of; empty where the row does not say
     * @param fields what the database has of it
     * @param key what the row has for the name of a form
     */
    public record Aside(UUID id, String form, String fields, String key) {
        /** Another program may have put in a row of any name: it is found by an id made from what stands there. */
        private static Aside of(String key, String fields) {
            var parts = key.substring(ASIDE.length()).split("/", 2);
            boolean isNamed = parts.length == 2 && RowId.of(parts[0]).toString().equals(parts[0]);
            return isNamed
                    ? new Aside(UUID.fromString(parts[0]), parts[1], fields, key)
                    : new Aside(RowId.of(key), "", fields, key);
        }
    }

    /** What was {@linkplain #isUnreadable damaged} and made room, until somebody throws it away. */
    public List<Aside> aside(UUID ranch) {
        return jdbi.withHandle(h -> h.createQuery("SELECT form, coalesce(" + OneRow.text("fields")
                        + ", '') AS fields FROM draft WHERE ranch_id = :ranch AND form LIKE :aside ORDER BY form")
                .bind("ranch", ranch.toString())
                .bind("aside", ASIDE + "%")
                .map((row, context) -> Aside.of(row.getString("form"), row.getString("fields")))
                .list());
    }

    public void throwAway(UUID ranch, Aside aside) {
        jdbi.useHandle(
                h -> h.execute("DELETE FROM draft WHERE ranch_id = ? AND form = ?", ranch.toString(), aside.key()));
    }

    /** It makes room for what is typed now, and stays in the database for somebody who can read it. */
    private void setAsideUnreadable(UUID ranch, String form) {
        if (isUnreadable(ranch, form)) {
            jdbi.useHandle(h -> h.execute(
                    "UPDATE draft SET form = ? WHERE ranch_id = ? AND form = ?",
                    ASIDE + UUID.randomUUID() + "/" + form,
                    ranch.toString(),
                    form));
        }
    }

    /** Names of the forms that have something waiting. */
    public List<String> waiting(UUID ranch) {
        return jdbi.withHandle(h -> h.createQuery("SELECT form FROM draft WHERE ranch_id = :ranch ORDER BY form")
                .bind("ranch", ranch.toString())
                .mapTo(String.class)
                .filter(form -> !form.startsWith(ASIDE))
                .list());
    }

    /** Just this is saved and waits no more, also where it made room for another; what is not just this stays. */
    public void clear(UUID ranch, String form, Map<String, List<String>> fields) {
        var beside = alone(form) + BESIDE;
        jdbi.useHandle(h -> h.execute(
                "DELETE FROM draft WHERE ranch_id = ? AND (form = ? OR substr(form, 1, ?) = ?) AND fields = ?",
                ranch.toString(),
                alone(form),
                beside.length(),
                beside,
                json(fields)));
    }

    public void clear(UUID ranch, String form) {
        setAsideUnreadable(ranch, form);
        jdbi.useHandle(h -> h.execute("DELETE FROM draft WHERE ranch_id = ? AND form = ?", ranch.toString(), form));
    }
}
