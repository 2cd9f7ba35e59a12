package org.thumbseal.fuzz;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;

/** Changes of what a document says, as somebody would make them who knows the format. */
enum TreeEdit {
  REMOVE {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      ObjectNode place = dice.of(objects(document));
      if (!place.isEmpty()) {
        place.remove(dice.of(List.copyOf(place.propertyNames())));
      }
    }
  },
  NUDGE_NUMBER {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      change(document, dice, JsonNode::isNumber, (place, name) -> nudge(place, name, dice));
    }
  },
  OTHER_TEXT {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      change(document, dice, JsonNode::isString, (place, name) -> edit(place, name, donor, dice));
    }
  },
  OTHER_KIND {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      change(document, dice, n -> true, (place, name) -> place.set(name, oddOne(place, dice)));
    }
  },
  ADD {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      ObjectNode place = dice.of(objects(document));
      place.put(Mutation.some("note", "verdict", dice), dice.bits() % 1_000);
    }
  },
  /** A member of one sealed document in the place of the other's: signature, ledger, evidence. */
  TRANSPLANT {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      String name = dice.of(List.copyOf(donor.propertyNames()));
      document.set(name, donor.get(name).deepCopy());
    }
  },
  SHUFFLE_ARRAY {
    @Override
    void apply(ObjectNode document, ObjectNode donor, Dice dice) {
      change(
          document,
          dice,
          JsonNode::isArray,
          (place, name) -> {
            ArrayNode array = (ArrayNode) place.get(name);
            if (!array.isEmpty()) {
              array.add(array.remove(dice.below(array.size())));
            }
          });
    }
  };

  private static final List<TreeEdit> ALL = List.of(values());

  abstract void apply(ObjectNode document, ObjectNode donor, Dice dice);

  static void any(ObjectNode document, ObjectNode donor, Dice dice) {
    dice.of(ALL).apply(document, donor, dice);
  }

  /** What is done at a member. */
  private interface Change {
    void at(ObjectNode place, String name);
  }

  private static void change(
      ObjectNode document, Dice dice, java.util.function.Predicate<JsonNode> which, Change change) {
    List<Runnable> all = new ArrayList<>();
    for (ObjectNode place : objects(document)) {
      place
          .propertyStream()
          .filter(member -> which.test(member.getValue()))
          .forEach(member -> all.add(() -> change.at(place, member.getKey())));
    }
    if (!all.isEmpty()) {
      dice.of(all).run();
    }
  }

  private static List<ObjectNode> objects(JsonNode node) {
    List<ObjectNode> found = new ArrayList<>();
    if (node instanceof ObjectNode object) {
      found.add(object);
    }
    for (JsonNode child : node) {
      found.addAll(objects(child));
    }
    return found;
  }

  private static void nudge(ObjectNode place, String name, Dice dice) {
    BigDecimal old = place.get(name).decimalValue();
    place.put(
        name,
        switch (dice.below(4)) {
          case 0 -> old.negate();
          case 1 -> old.add(BigDecimal.ONE);
          case 2 -> old.movePointRight(dice.between(-9, 9));
          default -> old.add(BigDecimal.ONE.movePointLeft(dice.between(1, 40)));
        });
  }

  private static void edit(ObjectNode place, String name, ObjectNode donor, Dice dice) {
    String old = place.get(name).stringValue();
    String other = dice.oneIn(3) ? donor.path("id").asString("x") : old;
    place.set(name, StringNode.valueOf(Mutation.some(old, other, dice)));
  }

  private static JsonNode oddOne(ObjectNode place, Dice dice) {
    return switch (dice.below(5)) {
      case 0 -> place.nullNode();
      case 1 -> place.booleanNode(true);
      case 2 -> place.arrayNode().add(1);
      case 3 -> place.objectNode().put("value", 1);
      default -> StringNode.valueOf("1");
    };
  }
}
