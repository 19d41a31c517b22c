"""The shape of ``namegen.yaml``."""

from __future__ import annotations

from pydantic import Field

from namegen.loading import values as v
from namegen.loading.shapes.shape import Shape


class NamesShape(Shape):
    """How device names are written."""

    what = "the rules for names"
    style: v.Style = Field(None, description="How words are joined; `any` permits every way.")
    longest: v.Whole = Field(None, description="Most letters of a name.", examples=[24])


class LookupShape(Shape):
    """Which places in code look a device up. One of call, new, annotation, subscript."""

    what = "a look-up"
    exactly_one = ("call", "new", "annotation", "subscript")
    call: v.Text = Field(
        None, description='Function or method: `anything.motor("...")`.', examples=["motor"]
    )
    new: v.Text = Field(
        None, description='Class that is constructed: `Motor("...")`.', examples=["Motor"]
    )
    annotation: v.Text = Field(
        None, description='Annotation: `@Device("...")`.', examples=["Fitted"]
    )
    subscript: v.Text = Field(
        None, description='What is subscripted: `motors["..."]`.', examples=["devices"]
    )
    on: v.Text = Field(
        None, description="Last word of the receiver, where it matters.", examples=["boat"]
    )
    name_at: v.Positions = Field(
        None,
        description="Position of the name among the arguments, from 0; a list; or `rest`.",
        examples=[0, [0, 1], "rest"],
    )
    name_key: v.Text = Field(
        None, description="Keyword under which the name may be given.", examples=["name"]
    )
    kind: v.KindName = Field(
        None, description="Kind of the devices that it looks up.", examples=["motor"]
    )
    kind_at: v.Position = Field(
        None, description="Position of the argument that says the kind.", examples=[1]
    )
    kind_by: v.SaysKind = Field(None, description="Where else the code says the kind.")
    kinds: v.TextMap = Field(
        None,
        description="Last identifier of the type in code -> kind.",
        examples=[{"Motor": "motor"}],
    )
    languages: v.Texts = Field(
        None, description="Languages it holds for; without it, all.", examples=[["python"]]
    )


class CodeShape(Shape):
    """Code and the robots that it runs on."""

    what = "a code entry"
    needed = ("path", "robots")
    path: v.Text = Field(None, description="Folder or file.", examples=["code/heron"])
    robots: v.Texts = Field(
        None, description="Robots it runs on; names must exist on each.", examples=[["heron"]]
    )
    setup: v.Text = Field(
        None, description="The setup it is for; without it, any.", examples=["harvest"]
    )
    exclude: v.Texts = Field(
        None, description="Globs of files that are left out.", examples=[["old/**"]]
    )


class BuildShape(Shape):
    """One sort of output."""

    what = "a build entry"
    needed = ("target", "to")
    target: v.Text = Field(None, description="Which sort of output.", examples=["python-constants"])
    to: v.Text = Field(
        None,
        description="Where it goes; `{robot}` and `{Robot}` stand for the robot's name. "
        "Put quotes around it.",
        examples=["code/{robot}/devices.py"],
    )
    robots: v.Texts = Field(
        None, description="Robots it is made for; without it, all.", examples=[["heron"]]
    )
    options: v.OptionMap = Field(
        None,
        alias="with",
        description="Options that the target declares.",
        examples=[{"package": "club.boats"}],
    )


class WorkspaceShape(Shape):
    """The workspace: robots, code, look-ups, outputs."""

    what = "a workspace"
    needed = ("robots",)
    robots: v.Texts = Field(
        None, description="The manifests, as paths or globs.", examples=[["robots/*.yaml"]]
    )
    catalogue: v.Text = Field(
        None, description="The catalogue's file.", examples=["catalogue.yaml"]
    )
    names: NamesShape | None = Field(None, description="How device names are written.")
    lookups: list[LookupShape] | None = Field(None, description="How code looks devices up.")
    code: list[CodeShape] | None = Field(None, description="Where code is and what it runs on.")
    build: list[BuildShape] | None = Field(None, description="Outputs to make.")
    templates: v.Text = Field(
        None, description="Folder with targets of the workspace's own.", examples=["my-templates"]
    )
