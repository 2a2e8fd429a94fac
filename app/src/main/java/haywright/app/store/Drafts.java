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
import java.util.UUID;
import org.jdbi.v3.core.Jdbi;

/** What was typed into a form and not saved yet, exactly as typed, right or wrong. */
public final class Drafts {
    /** Stands for the round, where a form belongs to no ranch yet. */
    public static final UUID THE_ROUND = new UUID(0, 0);

    private static final String ASIDE = "set-aside/";

    /** A box may be empty, and never has a null in it. */
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .defaultSetterInfo(JsonSetter.Value.construct(Nulls.FAIL, Nulls.FAIL))
            .build();

    private final Jdbi jdbi;

    Drafts(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** @param form names the form and what it is about: {@code lot/UUID}, {@code report/new} */
    public void put(UUID ranch, String form, Map<String, List<String>> fields) {
        String json;
        try {
            json = MAPPER.writeValueAsString(fields);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
        setAsideUnreadable(ranch, form);
        jdbi.useHandle(h -> h.createUpdate("INSERT INTO draft (ranch_id, form, fields) VALUES (:ranch, :form, :fields)"
                        + " ON CONFLICT (ranch_id, form) DO UPDATE SET fields = excluded.fields")
                .bind("ranch", ranch.toString())
                .bind("form", form)
                .bind("fields", json)
                .execute());
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

    /** What waits under one name waits under another; nothing may wait there. */
    public void move(UUID ranch, String form, String to) {
        jdbi.useHandle(h ->
                h.execute("UPDATE draft SET form = ? WHERE ranch_id = ? AND form = ?", to, ranch.toString(), form));
    }

    public void clear(UUID ranch, String form) {
        setAsideUnreadable(ranch, form);
        jdbi.useHandle(h -> h.execute("DELETE FROM draft WHERE ranch_id = ? AND form = ?", ranch.toString(), form));
    }
}
