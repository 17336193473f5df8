"""Yarns in the real window: other pairs, the palette, swapping, and how colours are seen; by mouse and by keyboard."""
import pathlib
import re

from driver import WindowTest, design, main

BAND = ["#..#.." * 4, ".#..#." * 4]


class Yarns(WindowTest):
    def begin(self, *arguments):
        self.path = self.write("cove.repeat", design(BAND, title="Cove"))
        return self.start(self.path, *arguments)

    def saved(self, editor):
        editor.save()
        text = pathlib.Path(self.path).read_text()
        yarns = dict(re.findall(r'key = "(.)"\nname = "([^"]*)"', text))
        band = text.split("[[band]]", 1)[1]
        keys = {side: re.search(rf'{side} = "(.)"', band).group(1) for side in ("main", "contrast")}
        return {side: yarns[key] for side, key in keys.items()}

    def test_another_pair_by_mouse(self):
        editor = self.begin("--tab", "yarns")
        editor.click("try pairs 1")
        editor.wait(lambda state: state["dialog"] == "pairs", "the pictures")
        self.assertEqual(editor.state["steps"], 0)
        editor.type("crab")
        editor.wait(lambda state: "pair Crab" in state["places"] and "pair Kelp" not in state["places"], "the search")
        editor.click("pair Crab")
        editor.wait(lambda state: state["dialog"] == "none" and state["steps"] == 1, "the pair taken")
        self.assertEqual(self.saved(editor), {"main": "Oat", "contrast": "Crab"})
        editor.key("ctrl+z")
        editor.wait(lambda state: state["steps"] == 0, "undo")
        self.assertEqual(self.saved(editor), {"main": "Oat", "contrast": "Ink"})

    def test_another_pair_by_keyboard_alone(self):
        editor = self.begin()
        editor.key("y")
        editor.wait(lambda state: state["dialog"] == "pairs", "the pictures")
        editor.type("kelp")
        editor.wait(lambda state: "pair Kelp" in state["places"] and "pair Crab" not in state["places"], "the search")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["steps"] == 1, "the pair taken")
        self.assertEqual(self.saved(editor), {"main": "Oat", "contrast": "Kelp"})
        editor.key("y")
        editor.wait(lambda state: state["dialog"] == "pairs", "the pictures")
        editor.key("Right", "Escape")
        editor.wait(lambda state: state["dialog"] == "none", "no other pair")
        self.assertEqual(editor.state["steps"], 1)

    def test_swap_and_palette(self):
        editor = self.begin("--tab", "yarns")
        editor.click("swap 1")
        editor.wait(lambda state: state["steps"] == 1, "the exchange")
        self.assertEqual(self.saved(editor), {"main": "Ink", "contrast": "Oat"})
        editor.click("yarn A palette")
        editor.wait(lambda state: state["dialog"] == "palette", "the palette")
        editor.type("oilskin")
        editor.wait(lambda state: "colour Oilskin" in state["places"] and "colour Fog" not in state["places"],
                    "the search")
        editor.key("Return")
        editor.wait(lambda state: state["dialog"] == "none" and state["steps"] == 2, "the colour taken")
        self.assertEqual(self.saved(editor), {"main": "Ink", "contrast": "Oilskin"})

    def test_a_colour_is_mixed_by_keys_alone_and_tab_goes_through_its_fields(self):
        editor = self.begin("--tab", "yarns")
        self.tab_until(editor, "yarn B colour")
        editor.key("Return")
        editor.wait(lambda state: "mix red" in state["places"] and state["idle"], "the mixer")
        for field in ("mix red", "mix green", "mix blue", "mix hex", "mix red"):
            editor.key("Tab")
            editor.wait(lambda state, field=field: state["keys_at"] == field and state["idle"], field)
        editor.type("18")
        editor.key("shift+Tab")
        editor.wait(lambda state: state["keys_at"] == "mix hex" and state["idle"], "back to the last")
        editor.key("Tab", "Tab")
        editor.wait(lambda state: state["keys_at"] == "mix green" and state["idle"], "the next part")
        editor.type("52")
        editor.key("Tab")
        editor.wait(lambda state: state["keys_at"] == "mix blue" and state["idle"], "the last part")
        editor.type("86")
        editor.key("Tab", "Escape", "Escape")
        editor.wait(lambda state: "mix red" not in state["places"] and state["idle"], "the mixer closed")
        editor.save()
        self.assertIn('"#123456"', pathlib.Path(self.path).read_text())

    def test_colours_are_seen_otherwise_without_a_change(self):
        editor = self.begin("--tab", "yarns")
        editor.click("sight")
        editor.click("sight deutan")
        editor.settle()
        editor.key("ctrl+l")
        editor.settle()
        self.assertEqual(editor.state["steps"], 0)
        self.assertTrue(editor.state["saved"])


if __name__ == "__main__":
    main()
